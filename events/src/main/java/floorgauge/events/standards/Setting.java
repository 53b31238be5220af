package floorgauge.events.standards;

import static floorgauge.events.standards.Quantity.AREA;
import static floorgauge.events.standards.Quantity.JERK_DENSITY;
import static floorgauge.events.standards.Quantity.LENGTH;
import static floorgauge.events.standards.Quantity.NUMBER;
import static floorgauge.events.standards.Quantity.SHARE;
import static floorgauge.events.standards.Quantity.SPEED;
import static floorgauge.events.standards.Quantity.TIME;

import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;

/**
 * Every threshold that is a choice. The key in the standards file is the group and the name; the default and the range are
 * SI. Values are common practice or this project's own choice unless a source is named.
 */
public enum Setting {
    SCREEN_CANDIDATE_DISTANCE(LENGTH, 2, 0.5, 3, "user passes the screener this close"),
    SCREEN_USER_SPEED(SPEED, 1.5, 0.3, 5, "user runs at least this fast past the screener"),
    SCREEN_DEFENDER_DISTANCE(LENGTH, 3, 1, 8, "user's defender is this near before the screen"),
    SCREEN_CONTACT_GAP(LENGTH, 0.10, 0, 0.5, "gap between the bodies that still counts as contact"),
    SCREEN_CONTACT_DURATION(TIME, 0.12, 0.04, 1, "contact lasts at least this long"),
    SCREEN_SET_SPEED(SPEED, 0.5, 0.1, 2, "a screener this slow is set"),
    SCREEN_SET_TIME(TIME, 0.5, 0.1, 2, "span before the screen in which the screener is to be set"),
    SCREEN_WEAK_QUALITY(Quantity.POINTS, 50, 10, 90, "a screen of less quality is weak"),
    SCREEN_MISSED_REACH(LENGTH, 1.0, 0.3, 2, "the defender crosses the screener's reach"),
    SCREEN_MISSED_TIME(TIME, 0.15, 0, 1, "a missed screen costs the defender less than this"),
    SCREEN_FULL_SEPARATION(LENGTH, 1.5, 0.3, 4, "separation gained that scores in full"),
    SCREEN_SEPARATION_TIME(TIME, 1.5, 0.5, 4, "span after the screen for the separation"),
    SCREEN_RECOVERED_DISTANCE(LENGTH, 1.2, 0.5, 3, "the defender is back when this near the user"),
    SCREEN_BRUSH_FULL(LENGTH, 0.5, 0, 2, "user-screener distance that scores in full"),
    SCREEN_BRUSH_NONE(LENGTH, 1.5, 0.1, 4, "user-screener distance that scores nothing"),
    SCREEN_REJECTED_DISTANCE(LENGTH, 1.5, 0.5, 4, "user turns away within this"),
    SCREEN_STAGGER_TIME(TIME, 2, 0.5, 4, "two screens for one user within this are staggered"),
    SCREEN_DOUBLE_DISTANCE(LENGTH, 1.2, 0.5, 3, "two screeners this near are a double"),
    SCREEN_SIMULTANEOUS_TIME(TIME, 0.7, 0.1, 2, "two screens within this are simultaneous"),
    SCREEN_DRAG_TIME(TIME, 6, 1, 12, "a ball screen this soon after half court is a drag"),
    SCREEN_WEIGHT_CONTACT(SHARE, 0.30, 0, 1, "weight of contact in screen quality"),
    SCREEN_WEIGHT_SET(SHARE, 0.15, 0, 1, "weight of being set in screen quality"),
    SCREEN_WEIGHT_BASE(SHARE, 0.10, 0, 1, "weight of the stance in screen quality"),
    SCREEN_WEIGHT_ANGLE(SHARE, 0.10, 0, 1, "weight of the angle in screen quality"),
    SCREEN_WEIGHT_BRUSH(SHARE, 0.10, 0, 1, "weight of the user's brush in screen quality"),
    SCREEN_WEIGHT_EFFECT(SHARE, 0.25, 0, 1, "weight of the separation in screen quality"),
    DEFENCE_SWITCH_TIME(TIME, 1, 0.3, 3, "an exchange that lasts this long is a switch"),
    DEFENCE_BLITZ_DISTANCE(LENGTH, 1.5, 0.5, 3, "both defenders this near the ball"),
    DEFENCE_BLITZ_TIME(TIME, 0.8, 0.2, 3, "for this long are a blitz"),
    DEFENCE_DROP_DISTANCE(LENGTH, 2, 0.5, 5, "screener's defender this far below is a drop"),
    DEFENCE_OUTLET_TIME(TIME, 1.5, 0.5, 4, "the outlet is to be there within this"),
    CONTROL_DISTANCE(LENGTH, 0.9, 0.3, 2, "a player this near the ball controls it"),
    CONTROL_RELEASE_DISTANCE(LENGTH, 1.3, 0.3, 3, "and loses it beyond this"),
    CONTROL_TIME(TIME, 0.16, 0.04, 1, "control lasts at least this long"),
    PASS_FLIGHT_TIME(TIME, 2.5, 0.5, 5, "a pass arrives within this"),
    PASS_HANDOFF_DISTANCE(LENGTH, 1.3, 0.5, 3, "a handoff is given within this"),
    PASS_SPEED(SPEED, 9, 3, 20, "speed of a straight pass"),
    PASS_ON_TIME(TIME, 0.6, 0.1, 2, "a pass this soon after the opening is on time"),
    SHOT_HEIGHT(LENGTH, 2.5, 2, 3.5, "a ball above this toward the rim is a shot"),
    WINDOW_OPEN_DISTANCE(LENGTH, 1.4, 0.5, 3, "no defender this near an open receiver"),
    WINDOW_TIME(TIME, 0.24, 0.08, 1, "a window is open for at least this long"),
    WINDOW_MISSED_TIME(TIME, 0.6, 0.24, 3, "a window this long, unused, is missed"),
    WINDOW_REACTION_TIME(TIME, 0.2, 0, 1, "a defender starts after this"),
    WINDOW_DEFENDER_SPEED(SPEED, 4.5, 1, 9, "and then runs this fast"),
    WINDOW_DEFENDER_REACH(LENGTH, 0.6, 0.1, 1.5, "and reaches this far"),
    WINDOW_SHOOTING_RANGE(LENGTH, 7.5, 2, 10, "a receiver this near the rim is a threat"),
    CUT_SPEED(SPEED, 3, 1.5, 6, "a cutter exceeds this"),
    CUT_TIME(TIME, 0.4, 0.1, 2, "for at least this long"),
    CUT_DISTANCE(LENGTH, 2, 0.5, 6, "and covers this"),
    CUT_EARLY_TIME(TIME, 0.2, 0, 2, "a start sooner before the screen is set is early"),
    CUT_LATE_TIME(TIME, 0.8, 0.1, 3, "a start later after the screen is set is late"),
    SPACING_CROWDED_DISTANCE(LENGTH, 2.4, 1, 6, "two attackers nearer than this crowd each other"),
    SPACING_CROWDED_TIME(TIME, 1.0, 0.2, 5, "for longer than this"),
    SPACING_COLLAPSED_AREA(AREA, 28, 5, 100, "five attackers span less than this"),
    SPACING_COLLAPSED_TIME(TIME, 1.5, 0.2, 5, "for longer than this"),
    SPACING_SETTLE_TIME(TIME, 3, 0, 10, "spacing counts from this long after a team has won the ball"),
    SPACING_CORNER_RADIUS(LENGTH, 2, 0.5, 4, "an attacker this near a corner fills it"),
    SPACING_STALLED_TIME(TIME, 3, 1, 10, "ball held longer than this"),
    SPACING_STALLED_SPEED(SPEED, 0.8, 0.2, 2, "while the attackers average under this"),
    MOTION_JERK_DENSITY(JERK_DENSITY, 150, 1, 2000, "how quickly a player's acceleration may change"),
    MOTION_ERROR_TIME(TIME, 0.12, 0, 0.5, "position errors of frames nearer than this go together"),
    MOTION_GATE(NUMBER, 4.0, 2, 10, "a position this many standard deviations off is an outlier"),
    MOTION_GATE_TIME(TIME, 1.0, 0.2, 3, "outliers longer than this start the track anew"),
    MOTION_GAP_TIME(TIME, 1.5, 0.2, 5, "a longer gap is not bridged"),
    MOTION_TOP_SPEED(SPEED, 9, 5, 12, "fastest a player runs"),
    POSSESSION_LEAST_TIME(TIME, 1.0, 0.2, 10, "a shorter stretch of play is no possession"),
    POSSESSION_MOST_TIME(TIME, 40, 10, 120, "a longer stretch of play is cut in two"),
    SCRIPT_PASS_TIME(TIME, 2.6, 0.3, 6, "a pass that a script has after a cut is released this soon after its start"),
    FLAG_PROBABILITY(SHARE, 0.7, 0.5, 0.999, "a flag is raised from this probability on");

    private final String group;
    private final String setting;
    private final Quantity quantity;
    private final double standard;
    private final double least;
    private final double most;
    private final String meaning;

    Setting(Quantity quantity, double standard, double least, double most, String meaning) {
        int first = name().indexOf('_');
        this.group = name().substring(0, first).toLowerCase(Locale.ROOT);
        this.setting = name().substring(first + 1).toLowerCase(Locale.ROOT).replace('_', '-');
        this.quantity = quantity;
        this.standard = standard;
        this.least = least;
        this.most = most;
        this.meaning = meaning;
    }

    /** The group it stands in, lower case. */
    public String group() {
        return group;
    }

    /** Its name within the group, lower case with hyphens. */
    public String setting() {
        return setting;
    }

    /** Group and name, as in {@code screen.contact-gap}. */
    public String key() {
        return group + "." + setting;
    }

    public Quantity quantity() {
        return quantity;
    }

    /** The value where the standards file says nothing, SI. */
    public double defaultValue() {
        return standard;
    }

    /** Smallest value that may be set, SI. */
    public double least() {
        return least;
    }

    /** Largest value that may be set, SI. */
    public double most() {
        return most;
    }

    /** What it means, in a few words. */
    public String meaning() {
        return meaning;
    }

    /** The setting of this {@link #key()}. */
    public static Optional<Setting> ofKey(String key) {
        return Arrays.stream(values()).filter(s -> s.key().equals(key)).findFirst();
    }
}
