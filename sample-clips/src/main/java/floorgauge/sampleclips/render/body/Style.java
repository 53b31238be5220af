package floorgauge.sampleclips.render.body;

import floorgauge.sampleclips.scene.Action;

/**
 * How a body stands in an action. Wrist targets are in the chest's directions from the same side's shoulder, in arm lengths.
 *
 * @param crouch how far the hips sink, as a share of the height
 * @param stance distance of the ankles, as a share of the height
 * @param lean forward, radians
 * @param swing share of the arms' swing with the gait, 0 to 1
 * @param front wrist before the shoulder
 * @param out wrist outside the shoulder, away from the body
 * @param up wrist above the shoulder
 */
record Style(double crouch, double stance, double lean, double swing, double front, double out, double up) {

    private static final Style MOVE = new Style(0.008, 0.13, 0.03, 1, 0.12, 0.08, -0.92);
    private static final Style DEFEND = new Style(0.095, 0.33, 0.42, 0.15, 0.50, 0.52, -0.32);
    private static final Style SCREEN = new Style(0.050, 0.30, 0.08, 0, 0.36, -0.42, -0.36);
    private static final Style READY = new Style(0.045, 0.22, 0.20, 0.1, 0.55, -0.05, -0.18);
    private static final Style HOLD = new Style(0.045, 0.22, 0.22, 0, 0.45, -0.18, -0.38);
    private static final Style DRIBBLE = new Style(0.055, 0.24, 0.28, 0.25, 0.38, 0.24, -0.62);
    private static final Style PASS = new Style(0.030, 0.24, 0.20, 0, 0.90, -0.22, -0.08);
    private static final Style CATCH = new Style(0.035, 0.22, 0.16, 0, 0.70, -0.16, -0.10);
    private static final Style SHOOT = new Style(0.020, 0.17, 0.02, 0, 0.45, -0.15, 0.80);
    private static final Style HAND_OFF = new Style(0.060, 0.26, 0.30, 0, 0.80, -0.02, -0.45);
    private static final Style SIT = new Style(0.260, 0.20, 0.18, 0, 0.45, -0.06, -0.80);

    static Style of(Action action) {
        return switch (action) {
            case MOVE -> MOVE;
            case DEFEND -> DEFEND;
            case SCREEN -> SCREEN;
            case READY -> READY;
            case HOLD -> HOLD;
            case DRIBBLE -> DRIBBLE;
            case PASS -> PASS;
            case CATCH -> CATCH;
            case SHOOT -> SHOOT;
            case HAND_OFF -> HAND_OFF;
            case SIT -> SIT;
        };
    }

    Style plus(double weight, Style o) {
        return new Style(
                crouch + weight * o.crouch,
                stance + weight * o.stance,
                lean + weight * o.lean,
                swing + weight * o.swing,
                front + weight * o.front,
                out + weight * o.out,
                up + weight * o.up);
    }

    static Style none() {
        return new Style(0, 0, 0, 0, 0, 0, 0);
    }

    Style towards(Style o, double share) {
        return none().plus(1 - share, this).plus(share, o);
    }
}
