package floorgauge.eval.tracking;

import java.util.Arrays;
import java.util.OptionalInt;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/**
 * What became of every truth and every result in every frame: the truth of an evaluation, over which scores are sums. Held
 * in columns of primitives (25 bytes an event), because a two-hour film of ten players has about two million of them.
 */
public final class EventLog {

    private static final int NOBODY = -1;

    private final SimilarityTable table;
    private final int size;
    private final TrackingEventKind[] kinds;
    private final int[] positions;
    private final int[] truths;
    private final int[] results;
    private final double[] similarities;

    private EventLog(Builder builder) {
        table = builder.table;
        size = builder.size;
        kinds = Arrays.copyOf(builder.kinds, size);
        positions = Arrays.copyOf(builder.positions, size);
        truths = Arrays.copyOf(builder.truths, size);
        results = Arrays.copyOf(builder.results, size);
        similarities = Arrays.copyOf(builder.similarities, size);
    }

    /** Number of events. */
    public int size() {
        return size;
    }

    /** Number of frames that were compared, also of those without an event. */
    public int frameCount() {
        return table.frames().size();
    }

    /** Number of identities in the truth. */
    public int truthCount() {
        return table.truthIds().size();
    }

    /** Number of identities in the result. */
    public int resultCount() {
        return table.resultIds().size();
    }

    /** All events in order of frame; within a frame pairs and misses in the truth's order, then false alarms. */
    public Stream<TrackingEvent> events() {
        return IntStream.range(0, size).mapToObj(this::event);
    }

    /** The event at the index, from 0. */
    public TrackingEvent event(int index) {
        FrameSimilarities frame = table.frames().get(positions[index]);
        return new TrackingEvent(
                kinds[index],
                frame.frame(),
                frame.timeSeconds(),
                id(table.truthIds(), truths[index]),
                id(table.resultIds(), results[index]),
                similarities[index]);
    }

    private static OptionalInt id(java.util.List<Integer> ids, int index) {
        return index == NOBODY ? OptionalInt.empty() : OptionalInt.of(ids.get(index));
    }

    TrackingEventKind kind(int index) {
        return kinds[index];
    }

    int truth(int index) {
        return truths[index];
    }

    int result(int index) {
        return results[index];
    }

    double similarity(int index) {
        return similarities[index];
    }

    /** Collects events frame by frame. */
    static final class Builder {
        private static final int INITIAL_CAPACITY = 256;

        private final SimilarityTable table;
        private int size;
        private TrackingEventKind[] kinds = new TrackingEventKind[INITIAL_CAPACITY];
        private int[] positions = new int[INITIAL_CAPACITY];
        private int[] truths = new int[INITIAL_CAPACITY];
        private int[] results = new int[INITIAL_CAPACITY];
        private double[] similarities = new double[INITIAL_CAPACITY];

        Builder(SimilarityTable table) {
            this.table = table;
        }

        void pair(TrackingEventKind kind, int position, int truth, int result, double similarity) {
            add(kind, position, truth, result, similarity);
        }

        void miss(int position, int truth) {
            add(TrackingEventKind.MISS, position, truth, NOBODY, 0);
        }

        void falseAlarm(int position, int result) {
            add(TrackingEventKind.FALSE_ALARM, position, NOBODY, result, 0);
        }

        EventLog build() {
            return new EventLog(this);
        }

        private void add(TrackingEventKind kind, int position, int truth, int result, double similarity) {
            if (size == kinds.length) {
                grow();
            }
            kinds[size] = kind;
            positions[size] = position;
            truths[size] = truth;
            results[size] = result;
            similarities[size] = similarity;
            size++;
        }

        private void grow() {
            int capacity = Math.multiplyExact(size, 2);
            kinds = Arrays.copyOf(kinds, capacity);
            positions = Arrays.copyOf(positions, capacity);
            truths = Arrays.copyOf(truths, capacity);
            results = Arrays.copyOf(results, capacity);
            similarities = Arrays.copyOf(similarities, capacity);
        }
    }
}
