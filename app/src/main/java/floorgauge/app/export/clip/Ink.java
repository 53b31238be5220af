package floorgauge.app.export.clip;

import org.opencv.core.Scalar;

/** The colours of the drawing, blue first as OpenCV has them: those of the printed sheet. */
final class Ink {

    static final Scalar PAPER = new Scalar(249, 252, 253);
    static final Scalar INK = new Scalar(26, 27, 27);
    static final Scalar QUIET = new Scalar(79, 84, 85);
    static final Scalar FAINT = new Scalar(173, 182, 185);

    /** What lies beyond its threshold. */
    static final Scalar ACCENT = new Scalar(30, 38, 179);

    /** The same, light enough for lines on film. */
    static final Scalar ACCENT_ON_FILM = new Scalar(69, 90, 255);

    private Ink() {}
}
