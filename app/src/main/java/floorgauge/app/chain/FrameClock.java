package floorgauge.app.chain;

import java.util.Map;
import java.util.SortedMap;

/** Finds the frame of a film that is nearest to a moment. */
final class FrameClock {

    private final long[] frames;
    private final double[] times;

    /** @param frameTimesSeconds presentation time by frame index, both rising; at least one */
    FrameClock(SortedMap<Long, Double> frameTimesSeconds) {
        frames = new long[frameTimesSeconds.size()];
        times = new double[frameTimesSeconds.size()];
        int i = 0;
        for (Map.Entry<Long, Double> entry : frameTimesSeconds.entrySet()) {
            frames[i] = entry.getKey();
            times[i] = entry.getValue();
            i++;
        }
    }

    /** The frame nearest in time; the earlier of two that are equally near. */
    long nearest(double timeSeconds) {
        int low = 0;
        int high = times.length - 1;
        while (high - low > 1) {
            int middle = (low + high) / 2;
            if (times[middle] <= timeSeconds) {
                low = middle;
            } else {
                high = middle;
            }
        }
        return timeSeconds - times[low] <= times[high] - timeSeconds ? frames[low] : frames[high];
    }
}
