package floorgauge.vision.tracking;

import floorgauge.court.rules.RuleSet;
import floorgauge.court.track.Team;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/**
 * How many players each kit has on the floor, from the film: the number of its tracks that are there at once, inside the
 * lines, where one number holds for most of the film.
 */
final class SideCounter {

    /** The number must hold for this share of the film. */
    private static final double LEAST_SHARE = 0.6;

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
        int first = steadyNumber(of(Team.FIRST, tracks, teams), rules);
        int second = steadyNumber(of(Team.SECOND, tracks, teams), rules);
        return first > 0 && second > 0 ? Optional.of(new Sides(first, second)) : Optional.empty();
    }

    private static List<Tracklet> of(Team team, List<Tracklet> tracks, List<Team> teams) {
        List<Tracklet> chosen = new ArrayList<>();
        for (int i = 0; i < tracks.size(); i++) {
            if (teams.get(i) == team) {
                chosen.add(tracks.get(i));
            }
        }
        return chosen;
    }

    /** 0 where there is none. */
    private static int steadyNumber(List<Tracklet> tracks, RuleSet rules) {
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
        int[] lasting = new int[tracks.size() + 1];
        Arrays.stream(present).forEach(n -> lasting[n]++);
        int most = 0;
        for (int n = 1; n < lasting.length; n++) {
            if (lasting[n] > lasting[most] || most == 0) {
                most = n;
            }
        }
        return lasting[most] >= LEAST_SHARE * steps ? most : 0;
    }

    private static void mark(boolean[] inside, double from, double to) {
        int first = (int) Math.ceil(from / STEP_SECONDS - 1e-9);
        for (int i = first; i < inside.length && i * STEP_SECONDS <= to + STEP_SECONDS / 2; i++) {
            inside[i] = true;
        }
    }
}
