package floorgauge.app.store;

import floorgauge.app.result.TracksWindow;
import floorgauge.events.finding.Finding;
import floorgauge.events.finding.RoleHolder;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.jdbi.v3.core.Handle;

/**
 * After a film was measured anew, finds the tracks that assignments name and the findings that verdicts judged. Ids of
 * tracks may all have changed, so people are told by where they were, and findings by kind, overlap in time, and who held
 * the roles. What matches nothing is kept, without a finding.
 */
final class Rematch {

    /** Intersection over union of the two intervals; below it they are two things. */
    private static final double LEAST_OVERLAP = 0.3;

    private final Handle handle;
    private final String film;
    private final FloorPlaces now;
    private final Set<Integer> trackIds;

    Rematch(Handle handle, String film, Path folder) {
        this.handle = handle;
        this.film = film;
        boolean needed = handle.createQuery("SELECT (SELECT COUNT(*) FROM subjects WHERE film_id = :film)"
                                + " + (SELECT COUNT(*) FROM assignments WHERE film_id = :film)")
                        .bind("film", film)
                        .mapTo(Long.class)
                        .one()
                > 0;
        this.now = needed ? FilmPlaces.read(TracksWindow.all(folder.resolve(FilmPlaces.FILE))) : FloorPlaces.NONE;
        this.trackIds = new HashSet<>(handle.createQuery("SELECT track_id FROM tracks WHERE film_id = :film")
                .bind("film", film)
                .mapTo(Integer.class)
                .list());
    }

    void run() {
        assignments();
        List<Judged> judged = handle.createQuery("SELECT * FROM subjects WHERE film_id = :film ORDER BY id")
                .bind("film", film)
                .map((rows, context) -> new Judged(
                        rows.getString("id"),
                        rows.getInt("by_hand") != 0,
                        rows.getString("kind"),
                        rows.getDouble("from_s"),
                        rows.getDouble("to_s"),
                        StoreJson.roles(rows.getString("roles")),
                        StoreJson.places(rows.getString("places"))))
                .list();
        List<Judged> renamed = judged.stream().map(this::rename).toList();
        match(renamed.stream().filter(j -> !j.byHand()).toList());
    }

    /** A subject with what is needed to find it again. */
    private record Judged(
            String id,
            boolean byHand,
            String kind,
            double from,
            double to,
            List<RoleHolder> roles,
            Map<Integer, List<TimedPlace>> places) {}

    private void assignments() {
        record Assigned(int track, String player, Map<Integer, List<TimedPlace>> places) {}
        List<Assigned> all = handle.createQuery("SELECT * FROM assignments WHERE film_id = :film ORDER BY track_id")
                .bind("film", film)
                .map((rows, context) -> new Assigned(
                        rows.getInt("track_id"),
                        rows.getString("player_id"),
                        StoreJson.places(rows.getString("places"))))
                .list();
        handle.createUpdate("DELETE FROM assignments WHERE film_id = :film")
                .bind("film", film)
                .execute();
        Set<Integer> taken = new HashSet<>();
        int lost = 0;
        for (Assigned assigned : all) {
            List<TimedPlace> places =
                    assigned.places().values().stream().flatMap(List::stream).toList();
            Optional<Integer> track = places.isEmpty()
                    ? Optional.of(assigned.track()).filter(trackIds::contains)
                    : nearest(places, taken);
            track.ifPresent(taken::add);
            handle.createUpdate("INSERT INTO assignments (film_id, track_id, player_id, places, found)"
                            + " VALUES (:film, :track, :player, :places, :found)")
                    .bind("film", film)
                    .bind("track", track.isPresent() ? track.get() : -(++lost))
                    .bind("player", assigned.player())
                    .bind("places", StoreJson.places(Map.of(track.orElse(assigned.track()), places)))
                    .bind("found", track.isPresent() ? 1 : 0)
                    .execute();
        }
    }

    private Optional<Integer> nearest(List<TimedPlace> places, Set<Integer> taken) {
        double best = FloorPlaces.SAME_PLACE_METRES;
        Optional<Integer> found = Optional.empty();
        for (int track : trackIds.stream().sorted().toList()) {
            OptionalDouble distance = now.distance(places, track);
            if (!taken.contains(track) && distance.isPresent() && distance.getAsDouble() <= best) {
                best = distance.getAsDouble();
                found = Optional.of(track);
            }
        }
        return found;
    }

    /** Gives the people of a subject, and of its verdicts, their new track ids. */
    private Judged rename(Judged judged) {
        Map<Integer, Integer> ids = new TreeMap<>();
        Set<Integer> taken = new HashSet<>();
        judged.places()
                .forEach((old, places) -> nearest(places, taken).ifPresent(id -> {
                    ids.put(old, id);
                    taken.add(id);
                }));
        boolean same = ids.entrySet().stream().allMatch(e -> e.getKey().equals(e.getValue()));
        if (same) {
            return judged;
        }
        List<RoleHolder> roles = renamed(judged.roles(), ids);
        Map<Integer, List<TimedPlace>> places = new TreeMap<>();
        judged.places().forEach((old, list) -> places.put(ids.getOrDefault(old, old), list));
        handle.createUpdate("UPDATE subjects SET roles = :roles, places = :places WHERE id = :id")
                .bind("roles", StoreJson.roles(roles))
                .bind("places", StoreJson.places(places))
                .bind("id", judged.id())
                .execute();
        Map<String, String> verdicts = handle
                .createQuery("SELECT id, roles FROM verdicts WHERE subject_id = :id")
                .bind("id", judged.id())
                .map((rows, context) -> Map.entry(rows.getString("id"), rows.getString("roles")))
                .stream()
                .collect(Collectors.toMap(Map.Entry::getKey, Map.Entry::getValue));
        verdicts.forEach((id, text) -> handle.createUpdate("UPDATE verdicts SET roles = :roles WHERE id = :id")
                .bind("roles", StoreJson.roles(renamed(StoreJson.roles(text), ids)))
                .bind("id", id)
                .execute());
        return new Judged(judged.id(), judged.byHand(), judged.kind(), judged.from(), judged.to(), roles, places);
    }

    private static List<RoleHolder> renamed(List<RoleHolder> roles, Map<Integer, Integer> ids) {
        return roles.stream()
                .map(r -> new RoleHolder(r.role(), ids.getOrDefault(r.trackId(), r.trackId())))
                .toList();
    }

    private void match(List<Judged> judged) {
        record Pair(Judged judged, String finding, double overlap, double shared) {}
        List<StoredFinding> findings = handle.createQuery(Films.findingsWhere("g.film_id = :film ORDER BY g.number"))
                .bind("film", film)
                .map((rows, context) -> Films.findingOf(rows))
                .list();
        List<Pair> pairs = new ArrayList<>();
        for (Judged one : judged) {
            for (StoredFinding finding : findings) {
                double overlap = overlap(one, finding.finding());
                double shared = shared(one.roles(), finding.finding().roles());
                boolean alike = finding.finding().kind().name().equals(one.kind()) && overlap >= LEAST_OVERLAP;
                if (alike && shared >= 0.5) {
                    pairs.add(new Pair(one, finding.id(), overlap, shared));
                }
            }
        }
        pairs.sort(Comparator.comparingDouble((Pair p) -> -p.overlap() * p.shared())
                .thenComparing(p -> p.judged().id())
                .thenComparing(Pair::finding));
        handle.createUpdate("UPDATE subjects SET finding_id = NULL WHERE film_id = :film")
                .bind("film", film)
                .execute();
        Set<String> taken = new HashSet<>();
        for (Pair pair : pairs) {
            if (!taken.contains(pair.judged().id()) && !taken.contains(pair.finding())) {
                taken.add(pair.judged().id());
                taken.add(pair.finding());
                handle.createUpdate("UPDATE subjects SET finding_id = :finding WHERE id = :id")
                        .bind("finding", pair.finding())
                        .bind("id", pair.judged().id())
                        .execute();
            }
        }
    }

    private static double overlap(Judged judged, Finding finding) {
        double shared = Math.min(judged.to(), finding.toSeconds()) - Math.max(judged.from(), finding.fromSeconds());
        double all = Math.max(judged.to(), finding.toSeconds()) - Math.min(judged.from(), finding.fromSeconds());
        return all > 0 ? Math.max(0, shared) / all : 1;
    }

    /** Share of the roles that the same people hold; 1 where there are none. */
    private static double shared(List<RoleHolder> judged, List<RoleHolder> found) {
        if (judged.isEmpty()) {
            return 1;
        }
        return judged.stream().filter(found::contains).count() / (double) judged.size();
    }
}
