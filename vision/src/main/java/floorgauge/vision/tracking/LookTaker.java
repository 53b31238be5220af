package floorgauge.vision.tracking;

import java.util.List;

/** Takes what is seen in a film, frame by frame. Looks come in order of time; a frame may be passed before it is looked at. */
interface LookTaker {

    /** The film has this frame. */
    void passed(long frame, double timeSeconds);

    /** People were looked for in this frame; {@code seen} may be empty. */
    void looked(long frame, double timeSeconds, List<Sighting> seen);

    /** Boxes of the frame looked at last that are nobody's on the floor. */
    void dropped(List<DetectionFate> boxes);
}
