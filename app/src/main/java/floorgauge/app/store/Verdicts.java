package floorgauge.app.store;

import floorgauge.app.result.TracksWindow;
import floorgauge.events.finding.Finding;
import floorgauge.events.finding.FindingKind;
import floorgauge.events.finding.RoleHolder;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.concurrent.locks.ReentrantLock;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.HandleCallback;

/**
 * What the analyst decided. Verdicts are only ever added; the last one that was not taken back holds. When a method
 * returns, the change is on the disk. Safe for use by several threads.
 */
public final class Verdicts {

    private static final double PLACE_ROOM_SECONDS = 0.3;

    private final Store store;
    private final ReentrantLock turns = new ReentrantLock();

    public Verdicts(Store store) {
        this.store = store;
    }

    /**
     * Judges a finding.
     *
     * @param film its film
     * @param found the finding; {@link Verdict#subject} is ignored in favour of what was judged before
     * @param verdict given twice it counts once
     * @return the subject's id
     */
    public String judge(StoredFilm film, StoredFinding found, Verdict verdict) {
        Finding finding = found.finding();
        String places = places(film, finding.roles(), finding.fromSeconds(), finding.toSeconds());
        return inTurn(handle -> {
            String subject = handle.createQuery("SELECT id FROM subjects WHERE finding_id = :finding ORDER BY id")
                    .bind("finding", found.id())
                    .mapTo(String.class)
                    .findFirst()
                    .orElseGet(() -> {
                        subject(
                                handle,
                                new Subject(
                                        found.id(),
                                        film.id(),
                                        Optional.of(found.id()),
                                        false,
                                        finding.kind(),
                                        finding.label(),
                                        finding.fromSeconds(),
                                        finding.toSeconds(),
                                        finding.roles(),
                                        finding.sentence(),
                                        Optional.empty()),
                                places);
                        return found.id();
                    });
            insert(handle, subject, verdict);
            return subject;
        });
    }

    /** Judges anew what matches no finding, or was entered by hand. @throws IllegalArgumentException where it is unknown */
    public void judgeAgain(Verdict verdict) {
        inTurn(handle -> {
            if (subject(handle, verdict.subject()).isEmpty()) {
                throw new IllegalArgumentException("nothing of that name was judged");
            }
            insert(handle, verdict.subject(), verdict);
            return verdict.subject();
        });
    }

    /** Enters something that the program did not find; {@link Verdict#subject} names it from now on. */
    public void enter(StoredFilm film, Verdict verdict) {
        String places = places(film, verdict.roles(), verdict.fromSeconds(), verdict.toSeconds());
        inTurn(handle -> {
            if (subject(handle, verdict.subject()).isEmpty()) {
                subject(
                        handle,
                        new Subject(
                                verdict.subject(),
                                film.id(),
                                Optional.empty(),
                                true,
                                verdict.kind(),
                                verdict.label(),
                                verdict.fromSeconds(),
                                verdict.toSeconds(),
                                verdict.roles(),
                                "Entered by hand.",
                                Optional.empty()),
                        places);
            }
            insert(handle, verdict.subject(), verdict);
            return verdict.subject();
        });
    }

    /** Takes the film's last verdict back. @return its subject; empty where none is left to take back */
    public Optional<Subject> takeBack(String filmId) {
        return store.jdbi().inTransaction(handle -> {
            Optional<Map.Entry<String, String>> last = handle.createQuery(
                            "SELECT id, subject_id FROM verdicts WHERE film_id = :film AND taken_back = 0"
                                    + " ORDER BY turn DESC LIMIT 1")
                    .bind("film", filmId)
                    .map((rows, context) -> Map.entry(rows.getString("id"), rows.getString("subject_id")))
                    .findFirst();
            if (last.isEmpty()) {
                return Optional.empty();
            }
            handle.createUpdate("UPDATE verdicts SET taken_back = 1 WHERE id = :id")
                    .bind("id", last.get().getKey())
                    .execute();
            return subject(handle, last.get().getValue());
        });
    }

    /**
     * Gives the verdict back that was taken back last, as long as none was given since.
     *
     * @return its subject; empty where there is none to give back
     */
    public Optional<Subject> giveBack(String filmId) {
        return store.jdbi().inTransaction(handle -> {
            Optional<Map.Entry<String, String>> taken = handle.createQuery(
                            "SELECT id, subject_id FROM verdicts WHERE film_id = :film AND taken_back = 1 AND turn >"
                                    + " (SELECT COALESCE(MAX(turn), 0) FROM verdicts WHERE film_id = :film"
                                    + " AND taken_back = 0) ORDER BY turn LIMIT 1")
                    .bind("film", filmId)
                    .map((rows, context) -> Map.entry(rows.getString("id"), rows.getString("subject_id")))
                    .findFirst();
            taken.ifPresent(verdict -> handle.createUpdate("UPDATE verdicts SET taken_back = 0 WHERE id = :id")
                    .bind("id", verdict.getKey())
                    .execute());
            return taken.flatMap(verdict -> subject(handle, verdict.getValue()));
        });
    }

    /** Everything that was judged on a film, in order of time; without those whose verdicts were all taken back. */
    public List<Subject> ofFilm(String filmId) {
        return store.jdbi().withHandle(handle -> {
            Map<String, Verdict> holding = new LinkedHashMap<>();
            handle.createQuery("SELECT * FROM verdicts WHERE film_id = :film AND taken_back = 0 ORDER BY turn")
                    .bind("film", filmId)
                    .map((rows, context) -> verdict(rows))
                    .forEach(v -> holding.put(v.subject(), v));
            List<Subject> subjects = new ArrayList<>();
            handle.createQuery("SELECT * FROM subjects WHERE film_id = :film ORDER BY from_s, id")
                    .bind("film", filmId)
                    .map((rows, context) -> subject(rows, Optional.ofNullable(holding.get(rows.getString("id")))))
                    .forEach(s -> {
                        if (s.verdict().isPresent()) {
                            subjects.add(s);
                        }
                    });
            return List.copyOf(subjects);
        });
    }

    /** The verdict that holds for a finding; empty where none does. */
    public Optional<Subject> ofFinding(String findingId) {
        return store.jdbi()
                .withHandle(
                        handle -> handle.createQuery("SELECT id FROM subjects WHERE finding_id = :finding ORDER BY id")
                                .bind("finding", findingId)
                                .mapTo(String.class)
                                .findFirst()
                                .flatMap(id -> subject(handle, id))
                                .filter(s -> s.verdict().isPresent()));
    }

    /** A subject; empty where none has this id. */
    public Optional<Subject> subject(String id) {
        return store.jdbi().withHandle(handle -> subject(handle, id));
    }

    /** How many verdicts were ever given. */
    public long given() {
        return store.jdbi()
                .withHandle(h -> h.createQuery("SELECT COUNT(*) FROM verdicts")
                        .mapTo(Long.class)
                        .one());
    }

    /** Whether a verdict of this id was given. */
    public boolean holds(String verdictId) {
        return store.jdbi()
                        .withHandle(h -> h.createQuery("SELECT COUNT(*) FROM verdicts WHERE id = :id")
                                .bind("id", verdictId)
                                .mapTo(Long.class)
                                .one())
                > 0;
    }

    /** One verdict at a time within this program, since turns count on. */
    private String inTurn(HandleCallback<String, RuntimeException> change) {
        turns.lock();
        try {
            return store.jdbi().inTransaction(change);
        } finally {
            turns.unlock();
        }
    }

    private static String places(StoredFilm film, List<RoleHolder> roles, double from, double to) {
        FloorPlaces all = FilmPlaces.read(new TracksWindow(
                film.folder().resolve(FilmPlaces.FILE), from - PLACE_ROOM_SECONDS, to + PLACE_ROOM_SECONDS));
        Map<Integer, List<TimedPlace>> places = new TreeMap<>();
        for (RoleHolder holder : roles) {
            List<TimedPlace> some = all.some(holder.trackId(), from - PLACE_ROOM_SECONDS, to + PLACE_ROOM_SECONDS);
            if (!some.isEmpty()) {
                places.put(holder.trackId(), some);
            }
        }
        return StoreJson.places(places);
    }

    private static void subject(Handle handle, Subject subject, String places) {
        handle.createUpdate("INSERT INTO subjects (id, film_id, finding_id, by_hand, kind, label, from_s, to_s, roles,"
                        + " places, sentence) VALUES (:id, :film, :finding, :byHand, :kind, :label, :from, :to, :roles,"
                        + " :places, :sentence) ON CONFLICT (id) DO NOTHING")
                .bind("id", subject.id())
                .bind("film", subject.filmId())
                .bind("finding", subject.findingId().orElse(null))
                .bind("byHand", subject.byHand() ? 1 : 0)
                .bind("kind", subject.kind().name())
                .bind("label", subject.label())
                .bind("from", subject.fromSeconds())
                .bind("to", subject.toSeconds())
                .bind("roles", StoreJson.roles(subject.roles()))
                .bind("places", places)
                .bind("sentence", subject.sentence())
                .execute();
    }

    private static void insert(Handle handle, String subject, Verdict verdict) {
        handle.createUpdate("INSERT INTO verdicts (id, turn, subject_id, film_id, answer, kind, label, from_s, to_s,"
                        + " roles, grade, note, author, given_at, taken_back) VALUES (:id,"
                        + " (SELECT COALESCE(MAX(turn), 0) + 1 FROM verdicts), :subject, :film, :answer, :kind, :label,"
                        + " :from, :to, :roles, :grade, :note, :author, :at, 0) ON CONFLICT (id) DO NOTHING")
                .bind("id", verdict.id())
                .bind("subject", subject)
                .bind("film", verdict.filmId())
                .bind("answer", verdict.answer().name())
                .bind("kind", verdict.kind().name())
                .bind("label", verdict.label())
                .bind("from", verdict.fromSeconds())
                .bind("to", verdict.toSeconds())
                .bind("roles", StoreJson.roles(verdict.roles()))
                .bind(
                        "grade",
                        verdict.grade().isPresent() ? (Integer) verdict.grade().getAsInt() : null)
                .bind("note", verdict.note())
                .bind("author", verdict.author())
                .bind("at", Instant.now().toString())
                .execute();
    }

    private static Optional<Subject> subject(Handle handle, String id) {
        Optional<Verdict> holding = handle.createQuery(
                        "SELECT * FROM verdicts WHERE subject_id = :id AND taken_back = 0 ORDER BY turn DESC LIMIT 1")
                .bind("id", id)
                .map((rows, context) -> verdict(rows))
                .findFirst();
        return handle.createQuery("SELECT * FROM subjects WHERE id = :id")
                .bind("id", id)
                .map((rows, context) -> subject(rows, holding))
                .findOne();
    }

    private static Subject subject(ResultSet rows, Optional<Verdict> verdict) throws SQLException {
        return new Subject(
                rows.getString("id"),
                rows.getString("film_id"),
                Optional.ofNullable(rows.getString("finding_id")),
                rows.getInt("by_hand") != 0,
                FindingKind.valueOf(rows.getString("kind")),
                rows.getString("label"),
                rows.getDouble("from_s"),
                rows.getDouble("to_s"),
                StoreJson.roles(rows.getString("roles")),
                rows.getString("sentence"),
                verdict);
    }

    private static Verdict verdict(ResultSet rows) throws SQLException {
        return new Verdict(
                rows.getString("id"),
                rows.getString("subject_id"),
                rows.getString("film_id"),
                Verdict.Answer.valueOf(rows.getString("answer")),
                FindingKind.valueOf(rows.getString("kind")),
                rows.getString("label"),
                rows.getDouble("from_s"),
                rows.getDouble("to_s"),
                StoreJson.roles(rows.getString("roles")),
                Films.whole(rows, "grade"),
                rows.getString("note"),
                rows.getString("author"));
    }
}
