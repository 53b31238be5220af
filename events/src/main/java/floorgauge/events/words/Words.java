package floorgauge.events.words;

import floorgauge.events.finding.Figure;
import floorgauge.events.finding.Unit;
import java.util.Locale;

/** Writes figures with their errors and probabilities in plain words; the same in every locale. */
public final class Words {

    private Words() {}

    /** As in {@code 0.42 ± 0.08 m}. */
    public static String of(Figure figure) {
        String number = number(figure.value(), figure.unit());
        String error = figure.standardError().isPresent()
                ? " ± " + number(figure.standardError().getAsDouble(), figure.unit())
                : "";
        String symbol = figure.unit().symbol();
        return number + error + (symbol.isEmpty() ? "" : " " + symbol);
    }

    /** A plain metre figure, as in {@code 2.4 m}. */
    public static String metres(double value) {
        return trimmed(value) + " m";
    }

    /** A plain second figure, as in {@code 0.6 s}. */
    public static String seconds(double value) {
        return trimmed(value) + " s";
    }

    /** A plain speed figure, as in {@code 0.5 m/s}. */
    public static String speed(double value) {
        return trimmed(value) + " m/s";
    }

    /** A player, as in {@code #7}. */
    public static String player(int trackId) {
        return "#" + trackId;
    }

    /** As in {@code sure to 9 in 10}. */
    public static String sure(double probability) {
        if (probability >= 0.995) {
            return "sure to 99 in 100";
        }
        if (probability >= 0.945) {
            return String.format(Locale.ROOT, "sure to %d in 100", Math.round(probability * 100));
        }
        return String.format(Locale.ROOT, "sure to %d in 10", Math.round(probability * 10));
    }

    private static String number(double value, Unit unit) {
        return switch (unit) {
            case METRES, SECONDS, METRES_PER_SECOND, SHARE -> String.format(Locale.ROOT, "%.2f", value);
            case SQUARE_METRES -> String.format(Locale.ROOT, "%.1f", value);
            case DEGREES, POINTS, COUNT -> String.format(Locale.ROOT, "%.0f", value);
        };
    }

    private static String trimmed(double value) {
        String text = String.format(Locale.ROOT, "%.2f", value);
        return text.endsWith("0") ? text.substring(0, text.length() - 1) : text;
    }
}
