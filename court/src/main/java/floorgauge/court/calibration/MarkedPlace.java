package floorgauge.court.calibration;

import floorgauge.court.floor.PixelPoint;
import floorgauge.court.rules.PaintedLine;
import java.util.Objects;

/**
 * A place somewhere on a painted line that a person marked in the picture, on the middle of the paint.
 *
 * @param label what messages call it: the line's name and which of its places
 * @param line on which it lies
 * @param pixel film point
 */
public record MarkedPlace(String label, PaintedLine line, PixelPoint pixel) implements CourtMark {

    public MarkedPlace {
        Objects.requireNonNull(label, "label");
        Objects.requireNonNull(line, "line");
        Objects.requireNonNull(pixel, "pixel");
    }

    @Override
    public int settles() {
        return 1;
    }
}
