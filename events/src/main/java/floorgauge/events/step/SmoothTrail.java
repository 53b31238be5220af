package floorgauge.events.step;

import floorgauge.court.floor.FloorPoint;
import floorgauge.events.finding.Trail;
import floorgauge.events.finding.TrailPoint;
import java.util.ArrayList;
import java.util.List;

/** A trail cleaned of jitter for drawing: each place is averaged over its neighbours in time with normal weights. Court frame, metres. */
public final class SmoothTrail {

    /** Steps of a gait take about 0.3 s (common practice); what is shorter is no way that a coach would draw. */
    private static final double WIDTH_SECONDS = 0.28;

    private static final double REACH = 2.5;

    private final int trackId;
    private final boolean attacking;
    private final double[] times;
    private final double[] xs;
    private final double[] ys;
    private final double[] errors;

    private SmoothTrail(int trackId, boolean attacking, double[] times, double[] xs, double[] ys, double[] errors) {
        this.trackId = trackId;
        this.attacking = attacking;
        this.times = times;
        this.xs = xs;
        this.ys = ys;
        this.errors = errors;
    }

    /** @param trail with a point at least */
    public static SmoothTrail of(Trail trail) {
        List<TrailPoint> points = trail.points();
        int n = points.size();
        double[] times = new double[n];
        double[] xs = new double[n];
        double[] ys = new double[n];
        double[] errors = new double[n];
        int from = 0;
        for (int i = 0; i < n; i++) {
            double t = points.get(i).timeSeconds();
            times[i] = t;
            errors[i] = points.get(i).position().covariance().standardErrorMetres();
            while (points.get(from).timeSeconds() < t - REACH * WIDTH_SECONDS) {
                from++;
            }
            // The same reach to both sides, so that the ends are not drawn inwards.
            double reach = Math.min(
                    REACH * WIDTH_SECONDS,
                    Math.min(t - points.get(0).timeSeconds(), points.get(n - 1).timeSeconds() - t));
            double weights = 0;
            for (int j = from; j < n && points.get(j).timeSeconds() <= t + reach + 1e-9; j++) {
                double apart = points.get(j).timeSeconds() - t;
                if (apart < -reach - 1e-9) {
                    continue;
                }
                double weight = Math.exp(-0.5 * Math.pow(apart / WIDTH_SECONDS, 2));
                FloorPoint mean = points.get(j).position().mean();
                xs[i] += weight * mean.xMetres();
                ys[i] += weight * mean.yMetres();
                weights += weight;
            }
            xs[i] /= weights;
            ys[i] /= weights;
        }
        return new SmoothTrail(trail.trackId(), trail.attacking(), times, xs, ys, errors);
    }

    public int trackId() {
        return trackId;
    }

    public boolean attacking() {
        return attacking;
    }

    public int size() {
        return times.length;
    }

    public double time(int i) {
        return times[i];
    }

    public double first() {
        return times[0];
    }

    public double last() {
        return times[times.length - 1];
    }

    public FloorPoint place(int i) {
        return new FloorPoint(xs[i], ys[i]);
    }

    /** Where the player is at a time, or was nearest to it in time. */
    public FloorPoint at(double seconds) {
        return place(index(seconds));
    }

    /** Standard error of the place at a time, metres; that of the measurement, which smoothing for the eye makes no better. */
    public double errorAt(double seconds) {
        return errors[index(seconds)];
    }

    /** Speed at a time, m/s. */
    public double speedAt(double seconds) {
        return speed(index(seconds));
    }

    /** Whether a time lies within the trail. */
    public boolean covers(double seconds) {
        return seconds >= times[0] - 0.1 && seconds <= times[times.length - 1] + 0.1;
    }

    /** Index nearest to a time. */
    public int index(double seconds) {
        int low = 0;
        int high = times.length - 1;
        while (low < high) {
            int middle = (low + high) >>> 1;
            if (times[middle] < seconds) {
                low = middle + 1;
            } else {
                high = middle;
            }
        }
        return low > 0 && seconds - times[low - 1] < times[low] - seconds ? low - 1 : low;
    }

    /** Speed over a fifth of a second about an index, m/s. */
    public double speed(int i) {
        int a = Math.max(0, i - 2);
        int b = Math.min(times.length - 1, i + 2);
        double span = times[b] - times[a];
        return span > 0 ? Math.hypot(xs[b] - xs[a], ys[b] - ys[a]) / span : 0;
    }

    public List<FloorPoint> between(double from, double to) {
        List<FloorPoint> places = new ArrayList<>();
        for (int i = index(from); i <= index(to); i++) {
            places.add(place(i));
        }
        return places;
    }

    /** Largest distance from the place at the first time, until the second. */
    public double reach(double from, double to) {
        FloorPoint start = at(from);
        return between(from, to).stream().mapToDouble(start::distanceTo).max().orElse(0);
    }
}
