package floorgauge.app.review;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import floorgauge.app.store.StoredFilm;
import floorgauge.app.store.StoredFinding;
import floorgauge.app.store.StoredTrack;
import floorgauge.app.store.Subject;
import floorgauge.app.store.Verdict;
import floorgauge.events.finding.FindingKind;
import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;

/** Takes verdicts, takes them back, and gives them back. */
final class VerdictRoutes {

    private final Room room;

    VerdictRoutes(Room room) {
        this.room = room;
    }

    void add(RoutesConfig routes) {
        routes.post("/do/verdict", this::judge);
        routes.post("/do/take-back", r -> {
            Optional<Subject> back = room.verdicts().takeBack(filmOf(r));
            changed(r, back, "Taken back.", "There is no verdict to take back.");
        });
        routes.post("/do/give-back", r -> {
            Optional<Subject> back = room.verdicts().giveBack(filmOf(r));
            changed(r, back, "Given back.", "Nothing was taken back since the last verdict.");
        });
    }

    private String filmOf(Context request) {
        return room.film(Requests.body(request).path("film").asText()).id();
    }

    private static void changed(Context request, Optional<Subject> subject, String said, String nothing) {
        answer(request, subject, subject.isPresent() ? said : nothing);
    }

    /** What a page shows of a subject, and a sentence. */
    private static void answer(Context request, Optional<Subject> subject, String said) {
        ObjectNode answer = Requests.object();
        answer.put("state", Words.verdict(subject.filter(s -> s.verdict().isPresent())));
        answer.put(
                "answer",
                subject.flatMap(Subject::verdict).map(v -> v.answer().name()).orElse(""));
        answer.put("finding", subject.flatMap(Subject::findingId).orElse(""));
        answer.put("subject", subject.map(Subject::id).orElse(""));
        answer.put("said", said);
        Requests.json(request, answer.toString());
    }

    private void judge(Context request) {
        JsonNode body = Requests.body(request);
        VerdictRequest asked = new VerdictRequest(body);
        Optional<Subject> judged = Optional.of(
                body.has("finding")
                        ? judgeFinding(asked)
                        : body.has("subject") ? judgeKept(asked) : enterByHand(asked, body));
        answer(request, judged, "Judged: " + Words.verdict(judged) + ".");
    }

    private Subject judgeFinding(VerdictRequest asked) {
        StoredFinding found = room.finding(asked.text("finding", ""));
        StoredFilm film = room.film(found.filmId());
        VerdictRequest.Standing standing = room.verdicts()
                .ofFinding(found.id())
                .flatMap(Subject::verdict)
                .map(VerdictRequest.Standing::of)
                .orElse(VerdictRequest.Standing.of(found));
        String subject = room.verdicts().judge(film, found, verdict(asked, standing, film));
        return room.verdicts().subject(subject).orElseThrow();
    }

    private Subject judgeKept(VerdictRequest asked) {
        Subject subject = room.verdicts().subject(asked.text("subject", "")).orElseThrow(Requests::missing);
        StoredFilm film = room.film(subject.filmId());
        VerdictRequest.Standing standing = VerdictRequest.Standing.of(subject);
        room.verdicts().judgeAgain(verdict(asked, standing, film));
        return room.verdicts().subject(subject.id()).orElseThrow();
    }

    private Subject enterByHand(VerdictRequest asked, JsonNode body) {
        StoredFilm film = room.film(body.path("film").asText());
        String id = "hand-" + UUID.nameUUIDFromBytes(asked.text("id", "").getBytes(StandardCharsets.UTF_8));
        VerdictRequest.Standing standing =
                VerdictRequest.Standing.unjudged(id, film.id(), FindingKind.SCREEN, "", 0, 0, List.of());
        room.verdicts().enter(film, verdict(asked, standing, film));
        return room.verdicts().subject(id).orElseThrow();
    }

    private Verdict verdict(VerdictRequest asked, VerdictRequest.Standing standing, StoredFilm film) {
        Set<Integer> tracks = room.films().tracks(film.id()).stream()
                .map(StoredTrack::trackId)
                .collect(Collectors.toSet());
        return asked.on(standing, tracks, film.durationSeconds());
    }
}
