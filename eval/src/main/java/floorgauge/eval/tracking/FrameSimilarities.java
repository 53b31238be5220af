package floorgauge.eval.tracking;

import floorgauge.eval.tracking.SimilarityTable.IdIndex;

/**
 * One frame of a {@link SimilarityTable}: who was there, and how well each result sits on each truth. Rows are truths,
 * columns are results, both in the order of the sequences.
 */
public final class FrameSimilarities {

    private final long frame;
    private final double timeSeconds;
    private final int[] truthIndices;
    private final int[] resultIndices;
    private final double[] similarities;

    private FrameSimilarities(
            long frame, double timeSeconds, int[] truthIndices, int[] resultIndices, double[] similarities) {
        this.frame = frame;
        this.timeSeconds = timeSeconds;
        this.truthIndices = truthIndices;
        this.resultIndices = resultIndices;
        this.similarities = similarities;
    }

    static <T> FrameSimilarities of(
            TrackFrame<T> truth,
            IdIndex truthIndex,
            TrackFrame<T> result,
            IdIndex resultIndex,
            Similarity<? super T> similarity) {
        int rows = truth.sightings().size();
        int columns = result.sightings().size();
        double[] similarities = new double[rows * columns];
        for (int row = 0; row < rows; row++) {
            for (int column = 0; column < columns; column++) {
                double value = similarity.of(
                        truth.sightings().get(row).place(),
                        result.sightings().get(column).place());
                if (!(value >= 0 && value <= 1)) {
                    throw new IllegalArgumentException(
                            "a similarity lies in 0 to 1: " + value + " in frame " + truth.frame());
                }
                similarities[row * columns + column] = value;
            }
        }
        return new FrameSimilarities(
                truth.frame(),
                truth.timeSeconds(),
                indices(truth, truthIndex),
                indices(result, resultIndex),
                similarities);
    }

    private static <T> int[] indices(TrackFrame<T> frame, IdIndex index) {
        return frame.sightings().stream().mapToInt(s -> index.indexOf(s.id())).toArray();
    }

    /** Index of the frame in the film, from 0. */
    public long frame() {
        return frame;
    }

    /** Presentation time as the truth gives it. */
    public double timeSeconds() {
        return timeSeconds;
    }

    public int truthCount() {
        return truthIndices.length;
    }

    public int resultCount() {
        return resultIndices.length;
    }

    /** Index of the identity in {@link SimilarityTable#truthIds()}. */
    public int truthIndex(int row) {
        return truthIndices[row];
    }

    /** Index of the identity in {@link SimilarityTable#resultIds()}. */
    public int resultIndex(int column) {
        return resultIndices[column];
    }

    /** 0 to 1. */
    public double similarity(int row, int column) {
        return similarities[row * resultIndices.length + column];
    }
}
