package floorgauge.eval.tracking;

import floorgauge.court.floor.FloorPoint;
import floorgauge.court.track.ImageBox;
import floorgauge.eval.tracking.MotChallengeFile.FirstFrame;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Reads MOTChallenge text line by line and remembers where it is, for the sake of its messages. */
final class MotChallengeParser {

    private static final String[] COLUMNS = {
        "frame", "id", "left", "top", "width", "height", "confidence", "x", "y", "z"
    };
    private static final int FEWEST_COLUMNS = 6;
    private static final int NOT_KNOWN = -1;

    private final Path file;
    private final long firstFrame;
    private final List<MotChallengeRow> rows = new ArrayList<>();
    private final Map<Long, Long> lineByFrameAndId = new HashMap<>();
    private long lineNumber;

    MotChallengeParser(Path file, FirstFrame firstFrame) {
        this.file = file;
        this.firstFrame = firstFrame == FirstFrame.ONE ? 1 : 0;
    }

    /** Takes the next line; blank lines pass. */
    void accept(String line) {
        lineNumber++;
        if (line.isBlank()) {
            return;
        }
        String[] fields = line.split(",", -1);
        if (fields.length < FEWEST_COLUMNS || fields.length > COLUMNS.length) {
            throw new MotChallengeException(
                    file,
                    lineNumber,
                    "all columns",
                    FEWEST_COLUMNS + " to " + COLUMNS.length + " values with commas between",
                    String.valueOf(fields.length));
        }
        rows.add(row(fields));
    }

    List<MotChallengeRow> rows() {
        return rows;
    }

    private MotChallengeRow row(String[] fields) {
        long frame = whole(fields, 0);
        if (frame < firstFrame) {
            throw problem(fields, 0, "a frame from " + firstFrame);
        }
        long id = whole(fields, 1);
        if (id < 0 || id > Integer.MAX_VALUE) {
            throw problem(fields, 1, "an id from 0 to " + Integer.MAX_VALUE);
        }
        Long before = lineByFrameAndId.put((frame << Integer.SIZE) ^ id, lineNumber);
        if (before != null) {
            throw problem(fields, 1, "an id that frame " + frame + " does not have yet (line " + before + ")");
        }
        double confidence = fields.length > 6 ? number(fields, 6) : NOT_KNOWN;
        return new MotChallengeRow(frame - firstFrame, (int) id, box(fields), confidence, floor(fields));
    }

    private Optional<ImageBox> box(String[] fields) {
        double left = number(fields, 2);
        double top = number(fields, 3);
        double width = number(fields, 4);
        double height = number(fields, 5);
        if (left == NOT_KNOWN && top == NOT_KNOWN && width == NOT_KNOWN && height == NOT_KNOWN) {
            return Optional.empty();
        }
        requirePositive(width, fields, 4);
        requirePositive(height, fields, 5);
        return Optional.of(new ImageBox(left, top, width, height));
    }

    private void requirePositive(double size, String[] fields, int column) {
        if (!(size > 0)) {
            throw problem(fields, column, "a size above 0");
        }
    }

    private Optional<FloorPoint> floor(String[] fields) {
        if (fields.length < COLUMNS.length) {
            return Optional.empty();
        }
        double x = number(fields, 7);
        double y = number(fields, 8);
        double z = number(fields, 9);
        return z == NOT_KNOWN ? Optional.empty() : Optional.of(new FloorPoint(x, y));
    }

    private long whole(String[] fields, int column) {
        double value = number(fields, column);
        if (value != Math.rint(value) || Math.abs(value) > Integer.MAX_VALUE) {
            throw problem(fields, column, "a whole number");
        }
        return (long) value;
    }

    private double number(String[] fields, int column) {
        try {
            double value = Double.parseDouble(fields[column].strip());
            if (Double.isFinite(value)) {
                return value;
            }
        } catch (NumberFormatException e) {
            throw problem(fields, column, "a number");
        }
        throw problem(fields, column, "a finite number");
    }

    private MotChallengeException problem(String[] fields, int column, String expected) {
        return new MotChallengeException(
                file,
                lineNumber,
                "column " + (column + 1) + " (" + COLUMNS[column] + ")",
                expected,
                "'" + fields[column].strip() + "'");
    }
}
