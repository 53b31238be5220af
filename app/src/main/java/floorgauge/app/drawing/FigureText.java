package floorgauge.app.drawing;

import floorgauge.events.finding.Figure;
import floorgauge.events.finding.Threshold;
import floorgauge.events.finding.Unit;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.Locale;
import java.util.OptionalDouble;

/** Figures in words and numerals, as they stand on a sheet. */
public final class FigureText {

    /** A true minus, as wide as a plus in tabular numerals. */
    private static final char MINUS = '\u2212';

    private static final char NARROW_SPACE = '\u00a0';

    private FigureText() {}

    /** The value with its error and unit, such as {@code 0.42 ± 0.08 m}. */
    public static String of(Figure figure) {
        String value = value(figure.value(), figure.unit());
        OptionalDouble error = figure.standardError();
        String tolerance = error.isPresent() ? " ± " + error(error.getAsDouble(), figure.unit()) : "";
        return withUnit((value + tolerance).replace(' ', NARROW_SPACE), figure.unit());
    }

    /** What a figure was held against, such as {@code at most 0.10 m}. */
    public static String of(Threshold threshold, Unit unit) {
        String side = threshold.sound() == Threshold.Side.AT_MOST ? "at most " : "at least ";
        return side + withUnit(value(threshold.value(), unit), unit);
    }

    /** Whether the figure lies on the wrong side of its threshold; false where there is none. */
    public static boolean isBeyond(Figure figure) {
        return figure.threshold()
                .map(t -> t.sound() == Threshold.Side.AT_MOST ? figure.value() > t.value() : figure.value() < t.value())
                .orElse(false);
    }

    /** A probability as a coach says it, such as {@code sure to 9 in 10}. */
    public static String sureness(double probability) {
        if (probability >= 0.95) {
            return "sure to " + Math.min(99, Math.round(probability * 100)) + " in 100";
        }
        long tenths = Math.round(probability * 10);
        return tenths == 0 ? "sure to less than 1 in 10" : "sure to " + tenths + " in 10";
    }

    /** A moment of the film in minutes and seconds, such as {@code 1:04.2}. */
    public static String time(double seconds) {
        long tenths = Math.round(Math.abs(seconds) * 10);
        String sign = seconds < 0 && tenths > 0 ? String.valueOf(MINUS) : "";
        return sign + String.format(Locale.ROOT, "%d:%02d.%d", tenths / 600, tenths / 10 % 60, tenths % 10);
    }

    /** A number with so many decimals and a true minus. */
    public static String decimal(double value, int decimals) {
        BigDecimal rounded = BigDecimal.valueOf(value).setScale(decimals, RoundingMode.HALF_EVEN);
        return rounded.toPlainString().replace('-', MINUS);
    }

    private static String value(double value, Unit unit) {
        return decimal(unit == Unit.SHARE ? value * 100 : value, decimals(unit));
    }

    /** An error is never written as zero: where it rounds to that, one unit of the last place stands for it. */
    private static String error(double value, Unit unit) {
        double scaled = unit == Unit.SHARE ? value * 100 : value;
        double least = Math.pow(10, -decimals(unit));
        return decimal(scaled > 0 ? Math.max(scaled, least) : 0, decimals(unit));
    }

    private static String withUnit(String number, Unit unit) {
        return switch (unit) {
            case COUNT -> number;
            case SHARE -> number + NARROW_SPACE + "%";
            case DEGREES -> number + unit.symbol();
            default -> number + NARROW_SPACE + unit.symbol();
        };
    }

    private static int decimals(Unit unit) {
        return switch (unit) {
            case METRES, SECONDS -> 2;
            case METRES_PER_SECOND, SQUARE_METRES -> 1;
            case DEGREES, POINTS, SHARE, COUNT -> 0;
        };
    }
}
