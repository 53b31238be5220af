package floorgauge.events.motion;

import floorgauge.court.floor.FloorCovariance;
import floorgauge.court.floor.FloorEstimate;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Consumer;

/**
 * Smooths the positions of one player or ball as they stream in, and gives out its motion at every tick, some seconds
 * late.
 *
 * <p>Observations farther from their prediction than the gate are left out; when they go on for longer than the gate time,
 * or when nothing is seen for longer than the gap time, the motion starts anew. Shorter gaps are bridged by the model, with
 * the error that it implies. Errors of frames nearer than the error time go together (the same posture, the same
 * calibration), so the covariance of an observation is multiplied by 2 tau / dt where the frames are that close: a higher
 * frame rate does not make a figure surer.
 *
 * <p>The backward pass sees {@value #LAG_SECONDS} s beyond what it gives out. Not safe for use by several threads.
 */
public final class MotionSmoother {

    private static final double LAG_SECONDS = 2;
    private static final double BLOCK_SECONDS = 4;
    private static final double SWAY_METRES = 0.05;
    private static final double LEAST_VARIANCE = 1e-6;
    private static final double NOMINAL_INTERVAL_SECONDS = 0.04;

    private final MotionPrior prior;
    private final IntegratedWiener model;
    private final Consumer<MotionSample> out;
    private FixedIntervalSmoother segment;
    private double lastAcceptedSeconds = Double.NEGATIVE_INFINITY;
    private double lastSeenSeconds = Double.NEGATIVE_INFINITY;
    private double firstRejectedSeconds = Double.NaN;
    private long nextTick;

    /** @param out takes the samples in order of their ticks */
    public MotionSmoother(MotionPrior prior, Consumer<MotionSample> out) {
        this.prior = prior;
        this.model = new IntegratedWiener(prior.order(), 2, prior.noiseDensity());
        this.out = out;
    }

    /** How much later than an observation its samples come out at the latest. */
    public static double latenessSeconds(MotionPrior prior) {
        return LAG_SECONDS + BLOCK_SECONDS + prior.gapSeconds();
    }

    /** Takes an observation in; times must grow. */
    public void observe(double timeSeconds, FloorEstimate seen) {
        if (timeSeconds <= lastSeenSeconds) {
            throw new IllegalArgumentException("time runs backwards: " + timeSeconds + " s");
        }
        double[] z = {seen.mean().xMetres(), seen.mean().yMetres()};
        double[] noise = noise(seen.covariance(), timeSeconds - lastSeenSeconds);
        lastSeenSeconds = timeSeconds;
        if (segment != null && timeSeconds - lastAcceptedSeconds > prior.gapSeconds()) {
            finish();
        }
        if (segment == null) {
            start(timeSeconds, z, noise);
            return;
        }
        wantTicksUpTo(timeSeconds);
        if (isOutlier(timeSeconds, z, noise)) {
            reject(timeSeconds, z, noise);
            return;
        }
        segment.observe(timeSeconds, z, noise);
        lastAcceptedSeconds = timeSeconds;
        firstRejectedSeconds = Double.NaN;
        giveOutBlock();
    }

    /** Says that time has reached an instant without an observation. */
    public void pass(double timeSeconds) {
        if (segment != null && timeSeconds - lastAcceptedSeconds > prior.gapSeconds()) {
            finish();
        }
    }

    /** Gives out what is left. */
    public void finish() {
        if (segment == null) {
            return;
        }
        List<SmootherStep> steps = segment.steps();
        int end = steps.size();
        while (end > 0 && steps.get(end - 1).time > lastAcceptedSeconds) {
            end--;
        }
        segment.cutOff(end);
        giveOut(end);
        segment = null;
        firstRejectedSeconds = Double.NaN;
    }

    private double[] noise(FloorCovariance covariance, double sinceLast) {
        double interval = Double.isInfinite(sinceLast) ? NOMINAL_INTERVAL_SECONDS : sinceLast;
        double factor = Math.max(1, 2 * prior.errorTimeSeconds() / interval);
        return new double[] {
            factor * covariance.xx() + LEAST_VARIANCE,
            factor * covariance.xy(),
            factor * covariance.xy(),
            factor * covariance.yy() + LEAST_VARIANCE
        };
    }

    private void start(double timeSeconds, double[] z, double[] noise) {
        int order = model.order();
        int n = model.size();
        double[] x = new double[n];
        double[] p = new double[n * n];
        for (int a = 0; a < 2; a++) {
            x[a * order] = z[a];
            for (int b = 0; b < 2; b++) {
                p[a * order * n + b * order] = noise[a * 2 + b];
            }
            for (int d = 1; d < order; d++) {
                double deviation = d == 1 ? prior.speedDeviation() : prior.accelerationDeviation();
                p[(a * order + d) * n + a * order + d] = deviation * deviation;
            }
        }
        segment = new FixedIntervalSmoother(model, timeSeconds, x, p);
        lastAcceptedSeconds = timeSeconds;
        firstRejectedSeconds = Double.NaN;
        nextTick = UniformClock.atOrAfter(timeSeconds);
        wantTicksUpTo(timeSeconds);
    }

    /**
     * Beyond the gate, where a sudden start or stop within human limits, and a step of the body, are let through however
     * sure the observation is.
     */
    private boolean isOutlier(double timeSeconds, double[] z, double[] noise) {
        double dt = timeSeconds - lastAcceptedSeconds;
        double surprise = SWAY_METRES + prior.accelerationDeviation() * dt * dt;
        double[] wide = noise.clone();
        wide[0] += surprise * surprise;
        wide[3] += surprise * surprise;
        return segment.squaredInnovation(timeSeconds, z, wide) > prior.gate() * prior.gate();
    }

    private void reject(double timeSeconds, double[] z, double[] noise) {
        if (Double.isNaN(firstRejectedSeconds)) {
            firstRejectedSeconds = timeSeconds;
        }
        if (timeSeconds - firstRejectedSeconds >= prior.gateSeconds()) {
            finish();
            start(timeSeconds, z, noise);
        }
    }

    private void wantTicksUpTo(double timeSeconds) {
        while (UniformClock.seconds(nextTick) <= timeSeconds + 1e-9) {
            segment.want(Math.max(UniformClock.seconds(nextTick), segment.lastTime()));
            nextTick++;
        }
    }

    private void giveOutBlock() {
        List<SmootherStep> steps = segment.steps();
        double start = steps.get(0).time;
        if (segment.lastTime() - start < BLOCK_SECONDS + LAG_SECONDS) {
            return;
        }
        int end = 0;
        while (steps.get(end).time < start + BLOCK_SECONDS) {
            end++;
        }
        giveOut(end);
        segment.forget(end);
    }

    private void giveOut(int end) {
        segment.smooth(end);
        List<MotionSample> samples = new ArrayList<>(end);
        for (SmootherStep step : segment.steps().subList(0, end)) {
            if (step.wanted) {
                samples.add(sample(step));
            }
        }
        samples.forEach(out);
    }

    private MotionSample sample(SmootherStep step) {
        int order = model.order();
        double[] x = step.state;
        return new MotionSample(
                UniformClock.nearest(step.time),
                x[0],
                x[order],
                x[1],
                x[order + 1],
                covariance(step.covariance, 0),
                covariance(step.covariance, 1));
    }

    private FloorCovariance covariance(double[] p, int derivative) {
        int n = model.size();
        int i = derivative;
        int j = model.order() + derivative;
        double xx = Math.max(p[i * n + i], 1e-12);
        double yy = Math.max(p[j * n + j], 1e-12);
        double most = Math.sqrt(xx * yy);
        return new FloorCovariance(xx, Math.max(-most, Math.min(most, p[i * n + j])), yy);
    }
}
