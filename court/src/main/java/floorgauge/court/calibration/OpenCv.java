package floorgauge.court.calibration;

import nu.pattern.OpenCV;

/** The one place that loads OpenCV's native library. Safe to call from any thread, any number of times. */
public final class OpenCv {

    private OpenCv() {}

    /** Loads the native library of this platform, once. */
    public static void load() {
        Holder.touch();
    }

    /** Class initialisation gives the once-only guarantee. */
    private static final class Holder {
        static {
            OpenCV.loadLocally();
        }

        static void touch() {}
    }
}
