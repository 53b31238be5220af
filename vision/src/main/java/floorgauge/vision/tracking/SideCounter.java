package floorgauge.vision.tracking;

import floorgauge.court.rules.RuleSet;
import floorgauge.court.track.Team;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/**
 * How many players each kit has on the floor, from the film: the median number of its tracks that are there at once, inside
 * the lines, where the number seldom differs by more than one. Where the two sides differ by one, one who was hidden or seen
 * double is likelier than uneven sides: the number that held for longer counts for both. Where they differ by two, one was
 * taken for an opponent: half of all are each side's.
 */
final class SideCounter {

    /** The number must hold, to within one, for this share of the film. */
    private static final double LEAST_SHARE = 0.75;

    /** Tracks are counted so often. */
    private static final double STEP_SECONDS = 0.2;

    private SideCounter() {}

    /** Players of each kit. */
    record Sides(int first, int second) {

        int of(Team team) {
            return team == Team.FIRST ? first : second;
        }
    }

    /**
     * The players of each side; empty where no number holds for long enough.
     *
     * @param teams of the tracks
     */
    static Optional<Sides> count(List<Tracklet> tracks, List<Team> teams, RuleSet rules) {
        Number first = number(of(Team.FIRST, tracks, teams), rules);
        Number second = number(of(Team.SECOND, tracks, teams), rules);
        if (first.players() == 0 || second.players() == 0) {
            return Optional.empty();
        }
        if (Math.abs(first.players() - second.players()) == 1) {
            int both = first.share() >= second.share() ? first.players() : second.players();
            return Optional.of(new Sides(both, both));
        }
        if (Math.abs(first.players() - second.players()) == 2) {
            int both = (first.players() + second.players()) / 2;
            return Optional.of(new Sides(both, both));
        }
        return Optional.of(new Sides(first.players(), second.players()));
    }

    /** So many players, for this share of the film exactly; none where there is no such number. */
    private record Number(int players, double share) {}

    private static List<Tracklet> of(Team team, List<Tracklet> tracks, List<Team> teams) {
        List<Tracklet> chosen = new ArrayList<>();
        for (int i = 0; i < tracks.size(); i++) {
            if (teams.get(i) == team) {
                chosen.add(tracks.get(i));
            }
        }
        return chosen;
    }

    private static Number number(List<Tracklet> tracks, RuleSet rules) {
        double from = tracks.stream().mapToDouble(Tracklet::startSeconds).min().orElse(0);
        double to = tracks.stream().mapToDouble(Tracklet::endSeconds).max().orElse(0);
        int steps = (int) Math.floor((to - from) / STEP_SECONDS) + 1;
        int[] present = new int[steps];
        for (Tracklet track : tracks) {
            boolean[] inside = new boolean[steps];
            // A person is there between two sightings as well.
            double last = Double.NaN;
            for (Sighting s : track.sightings()) {
                boolean in = CourtArea.outsideBy(rules, s.foot().mean()) == 0;
                if (in) {
                    mark(inside, (Double.isNaN(last) ? s.timeSeconds() : last) - from, s.timeSeconds() - from);
                }
                last = in ? s.timeSeconds() : Double.NaN;
            }
            for (int i = 0; i < steps; i++) {
                present[i] += inside[i] ? 1 : 0;
            }
        }
        Arrays.sort(present);
        int median = present[steps / 2];
        long near =
                Arrays.stream(present).filter(n -> Math.abs(n - median) <= 1).count();
        long exactly = Arrays.stream(present).filter(n -> n == median).count();
        return near >= LEAST_SHARE * steps ? new Number(median, (double) exactly / steps) : new Number(0, 0);
    }

    private static void mark(boolean[] inside, double from, double to) {
        int first = (int) Math.ceil(from / STEP_SECONDS - 1e-9);
        for (int i = first; i < inside.length && i * STEP_SECONDS <= to + STEP_SECONDS / 2; i++) {
            inside[i] = true;
        }
    }
}
