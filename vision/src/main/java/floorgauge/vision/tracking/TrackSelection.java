package floorgauge.vision.tracking;

import floorgauge.court.floor.FloorPoint;
import floorgauge.court.rules.RuleSet;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Set;

/**
 * Which tracks are people: those seen long enough, on the court, before an empty hall; and, where the number of players is
 * known, never more at a time than that.
 */
final class TrackSelection {

    /** Two pieces of one person may overlap by this much before they count as two people. */
    private static final double OVERLAP_SECONDS = 0.3;

    /** A person on the floor is seen in at least this share of the frames between the first and the last sighting. */
    private static final double LEAST_SHARE_SEEN = 0.25;

    /** Whoever is inside the lines for this long is a player, wherever else they were. */
    private static final double INSIDE_SECONDS = 3;

    /** Share of the sightings inside the lines of someone who never moves. */
    private static final double MOSTLY_INSIDE = 0.9;

    /** A defender stands no farther than this from whoever stands still (common practice: help is a pass away). */
    private static final double AMONG_METRES = 4;

    /** Least share of a person's box that differs from the empty hall, in a quarter of the sightings. */
    private static final double LEAST_MOVING_SHARE = 0.06;

    /** Further than errors of measurement carry someone who stands. */
    private static final double TRAVEL_METRES = 2;

    private TrackSelection() {}

    /** Tracklets that are more than a lone false alarm. */
    static List<Tracklet> repeated(List<Tracklet> tracklets) {
        return tracklets.stream().filter(t -> t.sightings().size() > 1).toList();
    }

    /**
     * The chosen ones in order of their starts.
     *
     * @param lookSeconds time between two frames in which people were looked for
     */
    static List<Tracklet> select(List<Tracklet> tracks, TrackingSettings settings, RuleSet rules, double lookSeconds) {
        List<Tracklet> longEnough = tracks.stream()
                .filter(t -> seenEnough(t, settings, lookSeconds))
                .toList();
        List<Tracklet> chosen = new ArrayList<>(
                settings.whom() == Whom.EVERYONE ? alive(longEnough) : players(longEnough, rules, lookSeconds));
        chosen.sort(Comparator.comparingDouble(Tracklet::startSeconds));
        return chosen;
    }

    /** Why a track was not chosen. */
    static Fate whyNot(Tracklet t, TrackingSettings settings, RuleSet rules, double lookSeconds) {
        if (!seenEnough(t, settings, lookSeconds)) {
            return Fate.TOO_BRIEF;
        }
        boolean outside = settings.whom() == Whom.PLAYERS && !isOnCourt(t, rules, lookSeconds);
        return outside ? Fate.OUTSIDE_THE_LINES : Fate.NEVER_MOVED;
    }

    private static List<Tracklet> players(List<Tracklet> tracks, RuleSet rules, double lookSeconds) {
        List<Tracklet> onCourt =
                tracks.stream().filter(t -> isOnCourt(t, rules, lookSeconds)).toList();
        return onCourt.stream().filter(playing(onCourt, rules)::contains).toList();
    }

    /**
     * Those who differ from the empty place, or went somewhere: who stands for most of the film is part of its background, but
     * seldom stood there from the first second to the last.
     */
    private static List<Tracklet> alive(List<Tracklet> tracks) {
        return tracks.stream().filter(t -> moves(t) || travels(t)).toList();
    }

    private static boolean travels(Tracklet t) {
        FloorPoint first = t.sightings().get(0).foot().mean();
        return t.sightings().stream().anyMatch(s -> s.foot().mean().distanceTo(first) >= TRAVEL_METRES);
    }

    private static boolean seenEnough(Tracklet t, TrackingSettings settings, double lookSeconds) {
        double seen = t.sightings().size() * lookSeconds;
        double span = t.endSeconds() - t.startSeconds() + lookSeconds;
        return seen >= settings.leastTrackSeconds() && seen >= LEAST_SHARE_SEEN * span;
    }

    /** A player goes over the line; a coach or a substitute stays outside it. */
    private static boolean isOnCourt(Tracklet t, RuleSet rules, double lookSeconds) {
        long inside = t.sightings().stream()
                .filter(s -> CourtArea.outsideBy(rules, s.foot().mean()) == 0)
                .count();
        return inside * lookSeconds >= INSIDE_SECONDS
                || inside * 2 >= t.sightings().size();
    }

    /**
     * Those who move; and of those who never do, a player who stands in a corner for as long as the film lasts. What hangs
     * on a wall has no foot inside the lines, and an official or a coach stands away from the others.
     */
    private static Set<Tracklet> playing(List<Tracklet> tracks, RuleSet rules) {
        Set<Tracklet> playing = Collections.newSetFromMap(new IdentityHashMap<>());
        List<TrackPath> movers = tracks.stream()
                .filter(TrackSelection::moves)
                .map(TrackPath::new)
                .toList();
        for (Tracklet t : tracks) {
            if (moves(t) || standsInside(t, rules) && isAmong(t, movers)) {
                playing.add(t);
            }
        }
        return playing;
    }

    private static boolean standsInside(Tracklet t, RuleSet rules) {
        long inside = t.sightings().stream()
                .filter(s -> CourtArea.outsideBy(rules, s.foot().mean()) == 0)
                .count();
        return inside >= MOSTLY_INSIDE * t.sightings().size();
    }

    /** Someone who moves is near for half of the time. */
    private static boolean isAmong(Tracklet t, List<TrackPath> movers) {
        long near = t.sightings().stream()
                .filter(s -> movers.stream()
                        .anyMatch(o -> o.covers(s.timeSeconds())
                                && o.at(s.timeSeconds()).distanceTo(s.foot().mean()) <= AMONG_METRES))
                .count();
        return 2 * near >= t.sightings().size();
    }

    /** Before a background, a person differs from the empty hall; a poster or a coat over a chair is part of it. */
    private static boolean moves(Tracklet t) {
        double[] shares = t.sightings().stream()
                .flatMapToDouble(s -> s.movingShare().stream())
                .sorted()
                .toArray();
        return shares.length == 0 || shares[shares.length * 3 / 4] >= LEAST_MOVING_SHARE;
    }

    /** Never more at a time than so many people, the best seen first. */
    static List<Tracklet> atMost(List<Tracklet> tracks, int people) {
        List<Tracklet> bestFirst = new ArrayList<>(tracks);
        bestFirst.sort(Comparator.comparingDouble(TrackSelection::evidence).reversed());
        List<Tracklet> chosen = new ArrayList<>();
        for (Tracklet t : bestFirst) {
            if (mostAtOnce(chosen, t) < people) {
                chosen.add(t);
            }
        }
        return chosen;
    }

    private static double evidence(Tracklet t) {
        return t.sightings().stream().mapToDouble(s -> s.observation().score()).sum();
    }

    /** How many of the chosen are on the floor at once while {@code t} is. */
    private static int mostAtOnce(List<Tracklet> chosen, Tracklet t) {
        double from = t.startSeconds() + OVERLAP_SECONDS;
        double to = t.endSeconds() - OVERLAP_SECONDS;
        int most = 0;
        for (Tracklet instant : chosen) {
            double at = Math.max(from, instant.startSeconds() + OVERLAP_SECONDS);
            if (at <= to && at <= instant.endSeconds() - OVERLAP_SECONDS) {
                most = Math.max(most, (int) chosen.stream()
                        .filter(c -> c.startSeconds() + OVERLAP_SECONDS <= at && at <= c.endSeconds() - OVERLAP_SECONDS)
                        .count());
            }
        }
        return most;
    }
}
