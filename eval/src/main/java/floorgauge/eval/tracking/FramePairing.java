package floorgauge.eval.tracking;

import floorgauge.eval.assignment.LinearAssignment;

/** Pairs the truths and results of one frame so that the sum of a score is greatest, and writes the frame to a log. */
final class FramePairing {

    /** The score of a row and a column of a frame; 0 or below: never a pair. */
    @FunctionalInterface
    interface Score {
        double of(int row, int column);
    }

    /** Says whether a pair is a match or a switch. */
    @FunctionalInterface
    interface Kind {
        TrackingEventKind of(int truth, int result);
    }

    private FramePairing() {}

    static void pair(FrameSimilarities frame, int position, Score score, Kind kind, EventLog.Builder log) {
        int rows = frame.truthCount();
        int columns = frame.resultCount();
        int[] columnOfRow = best(rows, columns, score);
        boolean[] used = new boolean[columns];
        for (int row = 0; row < rows; row++) {
            int column = columnOfRow[row];
            int truth = frame.truthIndex(row);
            if (column == LinearAssignment.UNASSIGNED) {
                log.miss(position, truth);
            } else {
                used[column] = true;
                int result = frame.resultIndex(column);
                log.pair(kind.of(truth, result), position, truth, result, frame.similarity(row, column));
            }
        }
        for (int column = 0; column < columns; column++) {
            if (!used[column]) {
                log.falseAlarm(position, frame.resultIndex(column));
            }
        }
    }

    private static int[] best(int rows, int columns, Score score) {
        double[] value = new double[rows * columns];
        for (int row = 0; row < rows; row++) {
            for (int column = 0; column < columns; column++) {
                value[row * columns + column] = Math.max(0, score.of(row, column));
            }
        }
        int[] columnOfRow = LinearAssignment.maximise(value, rows, columns);
        for (int row = 0; row < rows; row++) {
            int column = columnOfRow[row];
            if (column >= 0 && value[row * columns + column] <= 0) {
                columnOfRow[row] = LinearAssignment.UNASSIGNED;
            }
        }
        return columnOfRow;
    }
}
