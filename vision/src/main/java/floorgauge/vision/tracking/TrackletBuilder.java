package floorgauge.vision.tracking;

import floorgauge.vision.kit.KitColour;
import floorgauge.vision.kit.KitLikelihood;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Joins sightings frame by frame into tracklets: each frame's people are given to the tracklets by the cheapest assignment
 * of log-likelihood ratios (position against the motion model's prediction, kit against the tracklet's) over a new person or
 * a false alarm. Confident sightings are given first, faint ones only continue what is left (Y. Zhang and others,
 * "ByteTrack: multi-object tracking by associating every detection box", 2022, section 3).
 *
 * <p>The score is that of S. Blackman, "Multiple hypothesis tracking for multiple target tracking", 2004, section on track
 * scores: ln N(innovation; 0, S) - ln(density of new persons and false alarms).
 */
final class TrackletBuilder {

    /** Squared distance beyond which two are not compared: the t distribution leaves two in a hundred outside. */
    private static final double GATE = 25;

    /** Persons appearing and false alarms, per square metre of floor and frame looked at. */
    static final double NEW_DENSITY = 0.01;

    /** An exchange that costs less than this, in nats, is an encounter. */
    private static final double ENCOUNTER_MARGIN = 4;

    /** Share of the newest kit in a tracklet's running kit. */
    private static final int KIT_MEMORY = 12;

    private final TrackingSettings settings;
    private final FloorMotion motion;
    private final double confidentScore;
    private final List<Open> open = new ArrayList<>();
    private final List<Open> all = new ArrayList<>();
    private final List<Encounter> encounters = new ArrayList<>();

    /** @param confidentScore a sighting with a lower score can continue a tracklet but not start one */
    TrackletBuilder(TrackingSettings settings, double confidentScore) {
        this.settings = settings;
        this.motion = settings.motion();
        this.confidentScore = confidentScore;
    }

    /** A tracklet that may still grow. */
    private static final class Open {
        final int index;
        final List<Sighting> sightings = new ArrayList<>();
        final List<KitColour> kits = new ArrayList<>();
        FloorState state;
        double stateSeconds;

        Open(int index) {
            this.index = index;
        }

        double lastSeconds() {
            return sightings.get(sightings.size() - 1).timeSeconds();
        }

        Optional<KitColour> kit() {
            return kits.isEmpty() ? Optional.empty() : Optional.of(KitColour.mean(kits));
        }
    }

    /** Takes the next frame in which people were looked for; {@code seen} may be empty. */
    void frame(double timeSeconds, List<Sighting> seen) {
        open.removeIf(o -> timeSeconds - o.lastSeconds() > settings.coastSeconds());
        for (Open o : open) {
            o.state = motion.predict(o.state, timeSeconds - o.stateSeconds);
            o.stateSeconds = timeSeconds;
        }
        double[][] costs = costs(seen);
        int[] given = assign(seen, costs);
        recordEncounters(timeSeconds, given, costs);
        List<Open> before = List.copyOf(open);
        boolean[] used = new boolean[seen.size()];
        for (int i = 0; i < before.size(); i++) {
            if (given[i] != Assignment.NONE) {
                used[given[i]] = true;
                extend(before.get(i), seen.get(given[i]));
            }
        }
        for (int j = 0; j < seen.size(); j++) {
            if (!used[j] && seen.get(j).observation().score() >= confidentScore) {
                start(seen.get(j));
            }
        }
    }

    /** Positive infinity outside the gate. */
    private double[][] costs(List<Sighting> seen) {
        double[][] costs = new double[open.size()][seen.size()];
        for (int i = 0; i < open.size(); i++) {
            Optional<KitColour> kit = open.get(i).kit();
            for (int j = 0; j < seen.size(); j++) {
                costs[i][j] = cost(open.get(i), kit, seen.get(j));
            }
        }
        return costs;
    }

    private double cost(Open tracklet, Optional<KitColour> kit, Sighting sighting) {
        Innovation innovation = motion.innovation(tracklet.state, sighting.foot());
        if (innovation.squaredDistance() > GATE) {
            return Double.POSITIVE_INFINITY;
        }
        double ratio = innovation.logDensity() - Math.log(NEW_DENSITY);
        if (kit.isPresent() && sighting.kit().isPresent()) {
            ratio += KitLikelihood.PRIOR.logRatio(kit.get(), sighting.kit().get());
        }
        return -ratio;
    }

    private int[] assign(List<Sighting> seen, double[][] costs) {
        int[] given = new int[open.size()];
        java.util.Arrays.fill(given, Assignment.NONE);
        boolean[] used = new boolean[seen.size()];
        for (boolean confident : new boolean[] {true, false}) {
            Assignment assignment = new Assignment(open.size(), seen.size(), 0);
            for (int i = 0; i < open.size(); i++) {
                for (int j = 0; j < seen.size(); j++) {
                    boolean now = seen.get(j).observation().score() >= confidentScore == confident;
                    if (now && given[i] == Assignment.NONE && !used[j] && costs[i][j] < 0) {
                        assignment.allow(i, j, costs[i][j]);
                    }
                }
            }
            int[] found = assignment.solve();
            for (int i = 0; i < found.length; i++) {
                if (found[i] != Assignment.NONE) {
                    given[i] = found[i];
                    used[found[i]] = true;
                }
            }
        }
        return given;
    }

    /** An exchange of two tracklets' sightings, one of which may be none, that costs little. */
    private void recordEncounters(double timeSeconds, int[] given, double[][] costs) {
        for (int i = 0; i < given.length; i++) {
            for (int k = i + 1; k < given.length; k++) {
                double margin = costOf(costs, i, given[k])
                        + costOf(costs, k, given[i])
                        - costOf(costs, i, given[i])
                        - costOf(costs, k, given[k]);
                boolean either = given[i] != Assignment.NONE || given[k] != Assignment.NONE;
                if (either && margin < ENCOUNTER_MARGIN) {
                    encounters.add(new Encounter(open.get(i).index, open.get(k).index, timeSeconds, margin));
                }
            }
        }
    }

    private static double costOf(double[][] costs, int row, int column) {
        return column == Assignment.NONE ? 0 : costs[row][column];
    }

    private void start(Sighting sighting) {
        Open o = new Open(all.size());
        o.state = motion.start(sighting.foot());
        o.stateSeconds = sighting.timeSeconds();
        o.sightings.add(sighting);
        sighting.kit().ifPresent(o.kits::add);
        open.add(o);
        all.add(o);
    }

    private void extend(Open o, Sighting sighting) {
        o.state = motion.updateRobustly(o.state, sighting.foot());
        o.sightings.add(sighting);
        sighting.kit().ifPresent(kit -> {
            o.kits.add(kit);
            if (o.kits.size() > KIT_MEMORY) {
                o.kits.remove(0);
            }
        });
    }

    /** All tracklets so far in order of their first frames. */
    List<Tracklet> tracklets() {
        return all.stream().map(o -> new Tracklet(o.sightings)).toList();
    }

    /** All encounters so far in order of time; indices are those of {@link #tracklets()}. */
    List<Encounter> encounters() {
        return List.copyOf(encounters);
    }
}
