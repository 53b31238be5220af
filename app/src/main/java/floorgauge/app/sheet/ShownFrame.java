package floorgauge.app.sheet;

import floorgauge.app.drawing.Crop;
import floorgauge.court.track.FloorFrame;
import floorgauge.events.finding.KeyFrame;
import java.util.Base64;
import java.util.Objects;

/**
 * A decisive frame of a finding with its picture.
 *
 * @param key the moment and what it shows
 * @param frame everyone in the frame nearest to it
 * @param crop the part of the frame that is shown
 * @param jpegBase64 that part as JPEG, in Base64
 */
public record ShownFrame(KeyFrame key, FloorFrame frame, Crop crop, String jpegBase64) {

    public ShownFrame {
        Objects.requireNonNull(key, "key");
        Objects.requireNonNull(frame, "frame");
        Objects.requireNonNull(crop, "crop");
        Objects.requireNonNull(jpegBase64, "jpegBase64");
    }

    /** Holds the picture as text, as a page needs it. */
    public static ShownFrame of(KeyFrame key, FloorFrame frame, Crop crop, byte[] jpeg) {
        return new ShownFrame(key, frame, crop, Base64.getEncoder().encodeToString(jpeg));
    }

    String dataAddress() {
        return "data:image/jpeg;base64," + jpegBase64;
    }
}
