package floorgauge.court.calibration;

/** How far a calibration can be trusted. Nothing is measured on {@link #NONE}. */
public enum CalibrationStatus {
    /** The lines or points carry the whole part of the floor that is in sight. */
    GOOD,
    /** Usable with its covariance, but something is thin: few lines, a large residual, or a small part of the floor. */
    WEAK,
    /** No court was found, or what was given cannot be fitted. */
    NONE
}
