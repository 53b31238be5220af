package floorgauge.app.drawing;

import floorgauge.court.track.Joint;
import java.util.List;

/** Which joints are joined when a body is drawn. */
public final class Limbs {

    /** A joint less certain than this is more often wrong than drawn right (common practice with pose networks). */
    public static final double LEAST_SCORE = 0.2;

    /** Trunk, arms, legs. */
    public static final List<Limb> ALL = List.of(
            new Limb(Joint.LEFT_SHOULDER, Joint.RIGHT_SHOULDER),
            new Limb(Joint.LEFT_HIP, Joint.RIGHT_HIP),
            new Limb(Joint.LEFT_SHOULDER, Joint.LEFT_HIP),
            new Limb(Joint.RIGHT_SHOULDER, Joint.RIGHT_HIP),
            new Limb(Joint.LEFT_SHOULDER, Joint.LEFT_ELBOW),
            new Limb(Joint.LEFT_ELBOW, Joint.LEFT_WRIST),
            new Limb(Joint.RIGHT_SHOULDER, Joint.RIGHT_ELBOW),
            new Limb(Joint.RIGHT_ELBOW, Joint.RIGHT_WRIST),
            new Limb(Joint.LEFT_HIP, Joint.LEFT_KNEE),
            new Limb(Joint.LEFT_KNEE, Joint.LEFT_ANKLE),
            new Limb(Joint.RIGHT_HIP, Joint.RIGHT_KNEE),
            new Limb(Joint.RIGHT_KNEE, Joint.RIGHT_ANKLE));

    private Limbs() {}

    /**
     * A limb.
     *
     * @param from one end
     * @param to the other end
     */
    public record Limb(Joint from, Joint to) {}
}
