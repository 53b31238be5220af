package floorgauge.sampleclips.labels;

import floorgauge.events.finding.Unit;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;

/** Names of the figures that labels carry, each with its unit. */
public final class FigureNames {

    /** Least distance between the envelopes of screener and user's defender. */
    public static final String GAP = "gap";
    /** Longest time without a break in which that gap is at most 0.10 m. */
    public static final String CONTACT_TIME = "contact time";
    /** Share of the half second before the screen in which the screener moves at most 0.5 m/s. */
    public static final String SET_SHARE = "set share";
    /** Mean speed of the screener in that half second. */
    public static final String SCREENER_SPEED = "screener speed";
    /** Distance of the screener's feet over shoulder width. */
    public static final String STANCE = "stance over shoulders";
    /** How squarely the screener faces the defender's way: |cos|. */
    public static final String SQUARENESS = "squareness";
    /** Least distance between the centres of user and screener. */
    public static final String BRUSH = "brush distance";
    /** Largest distance of user and his defender in the 1.5 s after the screen less the one 0.3 s before it. */
    public static final String SEPARATION = "separation gained";
    /** Time from the screen until the defender is within 1.2 m of the user again. */
    public static final String TIME_LOST = "time lost";
    /** Quality of a screen, 0 to 100. */
    public static final String QUALITY = "quality";
    /** Release of a pass less the opening of its window. */
    public static final String DELAY = "delay";
    /** Time from release to reception. */
    public static final String FLIGHT_TIME = "flight time";
    /** Distance from the receiver to the nearest defender at the opening of the window. */
    public static final String OPENING_SEPARATION = "separation at opening";
    /** The same at reception. */
    public static final String RECEPTION_SEPARATION = "separation at reception";
    /** Length of an open window. */
    public static final String WINDOW_LENGTH = "window length";
    /** Start of a cut less the moment at which its screen is set. */
    public static final String START_AFTER_SET = "start after set";
    /** Largest speed of a cut. */
    public static final String TOP_SPEED = "top speed";
    /** Displacement of a cut. */
    public static final String DISPLACEMENT = "displacement";
    /** Least distance between two attackers. */
    public static final String LEAST_DISTANCE = "least distance";
    /** Least area of the attackers' convex hull. */
    public static final String LEAST_HULL = "least hull area";
    /** Mean speed of the attackers. */
    public static final String MEAN_SPEED = "mean speed";
    /** How long a spell lasts. */
    public static final String DURATION = "duration";

    private static final Map<String, Unit> UNITS = units();

    private FigureNames() {}

    /** All names with their units, in a fixed order. */
    public static Map<String, Unit> all() {
        return UNITS;
    }

    /** @param name one of the names above */
    public static LabelledFigure figure(String name, double value) {
        Unit unit = UNITS.get(name);
        if (unit == null) {
            throw new IllegalArgumentException("no figure is named " + name);
        }
        return new LabelledFigure(name, value, unit);
    }

    private static Map<String, Unit> units() {
        Map<String, Unit> units = new LinkedHashMap<>();
        units.put(GAP, Unit.METRES);
        units.put(CONTACT_TIME, Unit.SECONDS);
        units.put(SET_SHARE, Unit.SHARE);
        units.put(SCREENER_SPEED, Unit.METRES_PER_SECOND);
        units.put(STANCE, Unit.SHARE);
        units.put(SQUARENESS, Unit.SHARE);
        units.put(BRUSH, Unit.METRES);
        units.put(SEPARATION, Unit.METRES);
        units.put(TIME_LOST, Unit.SECONDS);
        units.put(QUALITY, Unit.POINTS);
        units.put(DELAY, Unit.SECONDS);
        units.put(FLIGHT_TIME, Unit.SECONDS);
        units.put(OPENING_SEPARATION, Unit.METRES);
        units.put(RECEPTION_SEPARATION, Unit.METRES);
        units.put(WINDOW_LENGTH, Unit.SECONDS);
        units.put(START_AFTER_SET, Unit.SECONDS);
        units.put(TOP_SPEED, Unit.METRES_PER_SECOND);
        units.put(DISPLACEMENT, Unit.METRES);
        units.put(LEAST_DISTANCE, Unit.METRES);
        units.put(LEAST_HULL, Unit.SQUARE_METRES);
        units.put(MEAN_SPEED, Unit.METRES_PER_SECOND);
        units.put(DURATION, Unit.SECONDS);
        return Collections.unmodifiableMap(units);
    }
}
