package floorgauge.sampleclips.render.camera;

import floorgauge.court.track.Team;
import floorgauge.sampleclips.render.value.Hash;
import floorgauge.sampleclips.scene.PersonState;
import floorgauge.sampleclips.scene.Scene;
import floorgauge.sampleclips.scene.SceneState;

/**
 * A camera turned by a person who follows the play: the middle of the players, pulled towards the ball, smoothed and late,
 * with the unsteadiness of a hand.
 */
final class FollowingCamera implements CameraPath {

    private static final int RATE = 30;
    private static final double BALL_PULL = 0.35;
    private static final double LATE_SECONDS = 0.25;

    /** How a hand follows and shakes. */
    enum Hand {
        /** Fluid head: follows closely, zooms, hardly shakes. */
        OPERATOR(0.9, 0.35, 0.0006, 0, 0),
        /** Two hands: follows lazily, no zoom, shakes. */
        PHONE(0.55, 0, 0.0035, 0.02, 0.012);

        private final double follow;
        private final double zoom;
        private final double shakeRadians;
        private final double swayMetres;
        private final double rollRadians;

        Hand(double follow, double zoom, double shakeRadians, double swayMetres, double rollRadians) {
            this.follow = follow;
            this.zoom = zoom;
            this.shakeRadians = shakeRadians;
            this.swayMetres = swayMetres;
            this.rollRadians = rollRadians;
        }
    }

    private final Lens lens;
    private final double[] position;
    private final Hand hand;
    private final long seed;
    private final double homeX;
    private final double[] aimX;
    private final double[] aimY;
    private final double[] spread;

    FollowingCamera(Scene scene, Lens lens, double[] position, Hand hand, double homeX, long seed) {
        this.lens = lens;
        this.position = position.clone();
        this.hand = hand;
        this.homeX = homeX;
        this.seed = seed;
        int count = (int) Math.ceil(scene.durationSeconds() * RATE) + 1;
        double[] x = new double[count];
        double[] y = new double[count];
        double[] s = new double[count];
        for (int i = 0; i < count; i++) {
            look(scene.at(Math.min(scene.durationSeconds(), (double) i / RATE)), x, y, s, i);
        }
        aimX = smooth(smooth(x));
        aimY = smooth(smooth(y));
        spread = smooth(smooth(s));
    }

    private static void look(SceneState state, double[] x, double[] y, double[] spread, int i) {
        int players = 0;
        for (PersonState p : state.people()) {
            if (plays(p)) {
                x[i] += p.position().xMetres();
                y[i] += p.position().yMetres();
                players++;
            }
        }
        int count = Math.max(1, players);
        x[i] /= count;
        y[i] /= count;
        for (PersonState p : state.people()) {
            if (plays(p)) {
                spread[i] +=
                        Math.hypot(p.position().xMetres() - x[i], p.position().yMetres() - y[i]) / count;
            }
        }
        state.ball().ifPresent(ball -> {
            x[i] += BALL_PULL * (ball.xMetres() - x[i]);
            y[i] += BALL_PULL * (ball.yMetres() - y[i]);
        });
    }

    private static boolean plays(PersonState p) {
        return p.person().team() == Team.FIRST || p.person().team() == Team.SECOND;
    }

    /** A running mean over 0.6 s. */
    private static double[] smooth(double[] v) {
        int reach = (int) (0.3 * RATE);
        double[] out = new double[v.length];
        for (int i = 0; i < v.length; i++) {
            for (int k = -reach; k <= reach; k++) {
                out[i] += v[Math.max(0, Math.min(v.length - 1, i + k))] / (2 * reach + 1);
            }
        }
        return out;
    }

    @Override
    public Camera at(double timeSeconds) {
        double t = timeSeconds - LATE_SECONDS;
        double x = homeX + hand.follow * (sample(aimX, t) - homeX);
        double y = hand.follow * sample(aimY, t);
        double zoom = 1 + hand.zoom * Math.max(-0.5, Math.min(1, (5.2 - sample(spread, t)) / 2.5));
        double[] from = position.clone();
        for (int i = 0; i < 3; i++) {
            from[i] += hand.swayMetres * unsteady(10 + i, timeSeconds);
        }
        double distance = Math.hypot(x - from[0], y - from[1]);
        double shakeAcross = hand.shakeRadians * distance * unsteady(1, timeSeconds);
        double shakeUp = hand.shakeRadians * distance * unsteady(2, timeSeconds);
        double nx = -(y - from[1]) / distance;
        double ny = (x - from[0]) / distance;
        double[] to = {x + shakeAcross * nx, y + shakeAcross * ny, 0.8 + shakeUp};
        double roll = hand.rollRadians * unsteady(3, timeSeconds * 0.5);
        return Camera.lookingAt(lens.zoomed(zoom), from, to, roll);
    }

    /** A hand's tremor and drift: noise at 0.7, 1.9 and 4.3 Hz, weaker as it gets faster. */
    private double unsteady(int which, double timeSeconds) {
        return Hash.noise(Hash.of(seed, which), timeSeconds * 0.7)
                + 0.45 * Hash.noise(Hash.of(seed, which + 50), timeSeconds * 1.9)
                + 0.15 * Hash.noise(Hash.of(seed, which + 90), timeSeconds * 4.3);
    }

    private static double sample(double[] v, double timeSeconds) {
        double at = Math.max(0, Math.min(v.length - 1.001, timeSeconds * RATE));
        int i = (int) at;
        double f = at - i;
        return v[i] * (1 - f) + v[Math.min(i + 1, v.length - 1)] * f;
    }
}
