package floorgauge.events.play;

import floorgauge.court.rules.CourtEnd;
import floorgauge.court.rules.RuleSet;

/** The half court under attack, in the attack frame. */
public final class AttackGeometry {

    private final RuleSet rules;
    private final double rimX;
    private final double baselineX;

    public AttackGeometry(RuleSet rules) {
        this.rules = rules;
        this.rimX = rules.rim(CourtEnd.POSITIVE_X).xMetres();
        this.baselineX = rules.lengthMetres() / 2;
    }

    /** x of the rim; its y is 0. */
    public double rimX() {
        return rimX;
    }

    /** x of the end line's inner edge. */
    public double baselineX() {
        return baselineX;
    }

    /** Distance to the rim along the floor, metres. */
    public double rimDistance(double x, double y) {
        return Math.hypot(x - rimX, y);
    }

    /** Whether a place is inside the lane. */
    public boolean inLane(double x, double y) {
        return Math.abs(y) <= rules.laneWidthMetres() / 2
                && x >= baselineX - rules.freeThrowLineMetres()
                && x <= baselineX;
    }

    /** Whether an x of the attack frame lies in the half under attack. */
    public static boolean inFrontCourt(double x) {
        return x > 0;
    }

    /** x of the free-throw line. */
    public double freeThrowX() {
        return baselineX - rules.freeThrowLineMetres();
    }

    /** Half of the lane's width. */
    public double halfLane() {
        return rules.laneWidthMetres() / 2;
    }

    /** Half of the court's width. */
    public double halfWidth() {
        return rules.widthMetres() / 2;
    }

    /** Whether a place is inside the three-point line. */
    public boolean insideArc(double x, double y) {
        return Math.abs(y) < halfWidth() - rules.threePointStraightMetres()
                && rimDistance(x, y) < rules.threePointRadiusMetres();
    }

    /** Radius of the three-point arc. */
    public double arcRadius() {
        return rules.threePointRadiusMetres();
    }

    /** Distance to the corner of the floor on a side. */
    public double cornerDistance(double x, double y, int side) {
        return Math.hypot(x - (baselineX - 0.9), y - side * (halfWidth() - rules.threePointStraightMetres() / 2));
    }

    /** Height of the rim, metres. */
    public double rimHeight() {
        return rules.rimHeightMetres();
    }
}
