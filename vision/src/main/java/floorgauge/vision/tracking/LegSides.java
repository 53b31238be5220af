package floorgauge.vision.tracking;

import floorgauge.court.floor.PixelPoint;
import floorgauge.court.track.Body;
import floorgauge.court.track.ImageBox;
import floorgauge.court.track.Joint;
import floorgauge.court.track.Keypoint;
import floorgauge.court.track.PlayerObservation;
import floorgauge.court.track.Pose;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/**
 * Keeps left and right legs what they are through a track: the pose network takes one for the other now and then, look by look.
 * Each look is as the network said, or exchanged; of all sequences the cheapest is taken (A. Viterbi, 1967), in which a knee or ankle
 * that leaves the way of its two last looks costs by how far, and an exchange by how rare it is. Two looks back are needed because legs
 * that pass each other are told apart by their speed alone.
 */
final class LegSides {

    /** A joint strays from its straight way by this share of the person's height: a swinging leg's acceleration, and noise. */
    private static final double STRAY = 0.06;

    /** And from where it last was, at the start of a track. */
    private static final double FIRST_STRAY = 0.2;

    /** What one joint can cost at most: the network's joints also jump for other reasons. */
    private static final double MOST = 6;

    /** The network is right nine times in ten (nats for an exchange). */
    private static final double EXCHANGE = Math.log(0.9 / 0.1);

    /** Looks farther apart than this say nothing of each other. */
    private static final double LONGEST_SECONDS = 0.25;

    private static final double LEAST_SCORE = 0.3;

    private static final Joint[] LEFT = {Joint.LEFT_KNEE, Joint.LEFT_ANKLE};
    private static final Joint[] RIGHT = {Joint.RIGHT_KNEE, Joint.RIGHT_ANKLE};

    private LegSides() {}

    /** The same observations with legs exchanged where that is likelier; in order of time. */
    static List<PlayerObservation> kept(List<PlayerObservation> track) {
        List<PlayerObservation> result = new ArrayList<>(track);
        List<Integer> run = new ArrayList<>();
        for (int i = 0; i < track.size(); i++) {
            if (!showsLegs(track.get(i))) {
                continue;
            }
            boolean far = !run.isEmpty()
                    && track.get(i).timeSeconds()
                                    - track.get(run.get(run.size() - 1)).timeSeconds()
                            > LONGEST_SECONDS;
            if (far) {
                settle(track, run, result);
                run.clear();
            }
            run.add(i);
        }
        settle(track, run, result);
        return result;
    }

    private static boolean showsLegs(PlayerObservation o) {
        return o.box().isPresent()
                && o.pose()
                        .filter(p -> seen(p.at(Joint.LEFT_ANKLE)) && seen(p.at(Joint.RIGHT_ANKLE)))
                        .isPresent();
    }

    private static boolean seen(Keypoint joint) {
        return joint.score() >= LEAST_SCORE;
    }

    private static void settle(List<PlayerObservation> track, List<Integer> run, List<PlayerObservation> result) {
        if (run.size() < 3) {
            return;
        }
        boolean[] exchanged = cheapest(run.stream().map(track::get).toList());
        for (int k = 0; k < exchanged.length; k++) {
            if (exchanged[k]) {
                result.set(run.get(k), exchanged(track.get(run.get(k))));
            }
        }
    }

    /** Over states of two looks: bit 0 the later one's, bit 1 the earlier one's. */
    private static boolean[] cheapest(List<PlayerObservation> looks) {
        int n = looks.size();
        double[] costs = new double[4];
        int[][] from = new int[n][4];
        for (int state = 0; state < 4; state++) {
            costs[state] =
                    unary(state >> 1) + unary(state & 1) + first(looks.get(0), looks.get(1), state >> 1, state & 1);
        }
        for (int i = 2; i < n; i++) {
            double[] next = new double[4];
            Arrays.fill(next, Double.POSITIVE_INFINITY);
            for (int state = 0; state < 4; state++) {
                for (int now = 0; now < 2; now++) {
                    double cost = costs[state]
                            + unary(now)
                            + step(looks.get(i - 2), looks.get(i - 1), looks.get(i), state >> 1, state & 1, now);
                    int to = (state & 1) << 1 | now;
                    if (cost < next[to]) {
                        next[to] = cost;
                        from[i][to] = state;
                    }
                }
            }
            costs = next;
        }
        int state = 0;
        for (int k = 1; k < 4; k++) {
            state = costs[k] < costs[state] ? k : state;
        }
        boolean[] exchanged = new boolean[n];
        for (int i = n - 1; i >= 1; i--) {
            exchanged[i] = (state & 1) == 1;
            exchanged[i - 1] = state >> 1 == 1;
            state = from[i][state];
        }
        return exchanged;
    }

    private static double unary(int exchanged) {
        return exchanged * EXCHANGE;
    }

    private static double first(PlayerObservation a, PlayerObservation b, int sideA, int sideB) {
        double cost = 0;
        for (int leg = 0; leg < 2; leg++) {
            for (int joint = 0; joint < LEFT.length; joint++) {
                Keypoint one = at(a, leg ^ sideA, joint);
                Keypoint other = at(b, leg ^ sideB, joint);
                if (seen(one) && seen(other)) {
                    cost += cost(one.position(), other.position(), FIRST_STRAY * height(b));
                }
            }
        }
        return cost;
    }

    private static double step(
            PlayerObservation a, PlayerObservation b, PlayerObservation c, int sideA, int sideB, int sideC) {
        double ahead = (c.timeSeconds() - b.timeSeconds()) / (b.timeSeconds() - a.timeSeconds());
        double cost = 0;
        for (int leg = 0; leg < 2; leg++) {
            for (int joint = 0; joint < LEFT.length; joint++) {
                Keypoint first = at(a, leg ^ sideA, joint);
                Keypoint second = at(b, leg ^ sideB, joint);
                Keypoint third = at(c, leg ^ sideC, joint);
                if (seen(first) && seen(second) && seen(third)) {
                    PixelPoint p = first.position();
                    PixelPoint q = second.position();
                    PixelPoint expected =
                            new PixelPoint(q.x() + ahead * (q.x() - p.x()), q.y() + ahead * (q.y() - p.y()));
                    cost += cost(expected, third.position(), STRAY * height(c));
                }
            }
        }
        return cost;
    }

    private static double cost(PixelPoint a, PixelPoint b, double sigma) {
        double distance = Math.hypot(a.x() - b.x(), a.y() - b.y()) / sigma;
        return Math.min(MOST, 0.5 * distance * distance);
    }

    private static double height(PlayerObservation o) {
        return o.box().map(ImageBox::height).orElseThrow();
    }

    private static Keypoint at(PlayerObservation o, int leg, int joint) {
        Pose pose = o.pose().orElseThrow();
        return pose.at(leg == 0 ? LEFT[joint] : RIGHT[joint]);
    }

    private static PlayerObservation exchanged(PlayerObservation o) {
        List<Keypoint> joints = new ArrayList<>(o.pose().orElseThrow().keypoints());
        for (int joint = 0; joint < LEFT.length; joint++) {
            joints.set(LEFT[joint].ordinal(), at(o, 1, joint));
            joints.set(RIGHT[joint].ordinal(), at(o, 0, joint));
        }
        Body b = o.body();
        Body body =
                new Body(b.rightAnkle(), b.leftAnkle(), b.facing(), b.stanceOverShoulders(), b.plantedProbability());
        return new PlayerObservation(
                o.frame(),
                o.timeSeconds(),
                o.foot(),
                o.source(),
                o.box(),
                Optional.of(new Pose(joints)),
                body,
                o.score());
    }
}
