package floorgauge.sampleclips.truth;

import floorgauge.court.floor.PixelPoint;
import java.util.Objects;
import java.util.Optional;

/**
 * One joint of one person.
 *
 * @param xMetres court frame
 * @param yMetres court frame
 * @param zMetres above the floor
 * @param pixel where it falls in the picture; empty behind the camera
 * @param visibility whether it can be seen
 */
public record JointTruth(
        double xMetres, double yMetres, double zMetres, Optional<PixelPoint> pixel, Visibility visibility) {

    public JointTruth {
        Objects.requireNonNull(pixel, "pixel");
        Objects.requireNonNull(visibility, "visibility");
    }
}
