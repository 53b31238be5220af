package floorgauge.court.calibration;

import floorgauge.court.floor.FloorPoint;
import floorgauge.court.floor.PixelPoint;
import java.util.Objects;

/**
 * A floor point that a person marked in the picture.
 *
 * @param label what messages call it: the point's name, or its place, with the line of its file where it has one
 * @param floor court frame
 * @param pixel film point
 */
public record MarkedPoint(String label, FloorPoint floor, PixelPoint pixel) implements CourtMark {

    public MarkedPoint {
        Objects.requireNonNull(label, "label");
        Objects.requireNonNull(floor, "floor");
        Objects.requireNonNull(pixel, "pixel");
    }

    @Override
    public int settles() {
        return 2;
    }
}
