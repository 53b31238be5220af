package floorgauge.sampleclips.render.camera;

import floorgauge.court.rules.CourtEnd;
import floorgauge.sampleclips.render.gym.Gym;
import floorgauge.sampleclips.render.value.Hash;
import floorgauge.sampleclips.scene.Scene;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** How practices are filmed (common practice). Places vary with a seed. */
public enum CameraStyle {
    /** A tripod on the lowest row of the stand, near the centre line, with the half court in view. */
    TRIPOD_SIDE,
    /** A tripod in the corner behind the end line. */
    TRIPOD_CORNER,
    /** A tripod on a balcony, near the centre line. */
    TRIPOD_HIGH,
    /** On the balcony, panned and zoomed by an operator who follows the play. */
    OPERATOR,
    /** A phone held by someone who stands on the lowest row. */
    PHONE;

    private static final double GYM_LENS = -0.10;

    /** Lower case with hyphens. */
    public String label() {
        return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    /** The style of a label. */
    public static Optional<CameraStyle> named(String label) {
        return Arrays.stream(values()).filter(s -> s.label().equals(label)).findFirst();
    }

    /** All labels. */
    public static List<String> labels() {
        return Arrays.stream(values()).map(CameraStyle::label).toList();
    }

    /**
     * A camera of this style.
     *
     * @param end that is played on
     */
    public CameraPath path(Scene scene, Gym gym, CourtEnd end, int width, int height, long seed) {
        int e = end.sign();
        double a = Hash.unit(seed, 101, 0);
        double b = Hash.unit(seed, 102, 0);
        double c = Hash.unit(seed, 103, 0);
        double wall = gym.halfWidthMetres() - 0.4;
        double middle = gym.rules().lengthMetres() * 0.29;
        return switch (this) {
            case TRIPOD_SIDE ->
                still(width, height, 78 + 4 * c, new double[] {e * (0.5 + 3 * a), -wall, 3.4 + 1.2 * b}, new double[] {
                    e * middle, 0.2, 0.3
                });
            case TRIPOD_HIGH ->
                still(width, height, 74 + 4 * c, new double[] {e * (1 + 4 * a), -wall, 5.6 + 1.2 * b}, new double[] {
                    e * middle, 0.4, 0
                });
            case TRIPOD_CORNER ->
                still(
                        width,
                        height,
                        80 + 6 * c,
                        new double[] {e * (gym.halfLengthMetres() - 0.5 - a), -wall + b, 3.2 + 1.3 * c},
                        new double[] {e * (middle - 1.5), 0.8, 0.2});
            case OPERATOR ->
                new FollowingCamera(
                        scene,
                        Lens.ofFieldOfView(width, height, 66, -0.06),
                        new double[] {e * (1 + 3 * a), -wall, 5.2 + b},
                        FollowingCamera.Hand.OPERATOR,
                        e * middle,
                        seed);
            case PHONE ->
                new FollowingCamera(
                        scene,
                        Lens.ofFieldOfView(width, height, 70, 0.02),
                        new double[] {e * (2 + 4 * a), -wall + 0.3, 2.4 + 0.8 * b},
                        FollowingCamera.Hand.PHONE,
                        e * middle,
                        seed);
        };
    }

    private static CameraPath still(int width, int height, double view, double[] from, double[] to) {
        return CameraPath.fixed(Camera.lookingAt(Lens.ofFieldOfView(width, height, view, GYM_LENS), from, to, 0));
    }
}
