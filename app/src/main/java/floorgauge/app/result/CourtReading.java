package floorgauge.app.result;

import floorgauge.court.calibration.CourtCalibration;
import floorgauge.court.floor.FloorPoint;
import floorgauge.court.floor.PixelPoint;
import floorgauge.court.rules.RuleSet;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.Optional;
import java.util.function.Function;

/**
 * Where the court lies in the picture, as far as results and drawings need it.
 *
 * @param rules the court
 * @param source {@code lines}, {@code points}, or {@code none} where positions came without a picture
 * @param status {@code good}, {@code weak} or {@code none}
 * @param reason one sentence
 * @param camera {@code still}, {@code moving}, or {@code none} where positions came without a picture
 * @param pixelToFloor homography row by row, pixels to metres in the court frame; empty where there is none
 * @param floorToPixel where a floor point appears in the film; empty out of sight, and always without a homography
 */
public record CourtReading(
        RuleSet rules,
        String source,
        String status,
        String reason,
        String camera,
        List<Double> pixelToFloor,
        Function<FloorPoint, Optional<PixelPoint>> floorToPixel) {

    public CourtReading {
        Objects.requireNonNull(rules, "rules");
        Objects.requireNonNull(source, "source");
        Objects.requireNonNull(status, "status");
        Objects.requireNonNull(reason, "reason");
        Objects.requireNonNull(camera, "camera");
        Objects.requireNonNull(floorToPixel, "floorToPixel");
        pixelToFloor = List.copyOf(pixelToFloor);
        if (!pixelToFloor.isEmpty() && pixelToFloor.size() != 9) {
            throw new IllegalArgumentException("a homography has nine entries, not " + pixelToFloor.size());
        }
    }

    /**
     * What a calibration says.
     *
     * @param source {@code lines} or {@code points}
     * @param still whether the camera stood still
     */
    public static CourtReading of(CourtCalibration calibration, String source, boolean still) {
        return new CourtReading(
                calibration.rules(),
                source,
                calibration.status().name().toLowerCase(Locale.ROOT),
                calibration.reason(),
                still ? "still" : "moving",
                Arrays.stream(calibration.homographyPixelToFloor()).boxed().toList(),
                point -> calibration.pixelAt(point.xMetres(), point.yMetres(), 0));
    }

    /** Positions that came from a file of tracks, without a picture. */
    public static CourtReading withoutPicture(RuleSet rules) {
        return new CourtReading(
                rules,
                "none",
                "none",
                "Positions were read from a file of tracks; no picture was looked at.",
                "none",
                List.of(),
                point -> Optional.empty());
    }
}
