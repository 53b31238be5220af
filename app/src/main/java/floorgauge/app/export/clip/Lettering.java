package floorgauge.app.export.clip;

import floorgauge.app.export.PlainText;
import java.util.ArrayList;
import java.util.List;
import org.opencv.core.Point;
import org.opencv.core.Scalar;
import org.opencv.core.Size;
import org.opencv.imgproc.Imgproc;

/**
 * Single-stroke lettering, as on a technical drawing. It is drawn from strokes (Hershey's Simplex, 1967, in OpenCV) rather than from
 * a font, so that a clip has the same bytes on every machine, whatever fonts it has. The strokes know ASCII; a plus-minus sign is put
 * together, accents are left out.
 *
 * @param pen what it is drawn with
 * @param height of capitals, units
 */
record Lettering(Pen pen, double height) {

    private static final int FONT = Imgproc.FONT_HERSHEY_SIMPLEX;

    /** Capitals of the strokes are 21 pixels high at scale 1. */
    private static final double CAPITALS = 21;

    private static final char PLUS_MINUS = '\u00b1';
    private static final String PLUS_MINUS_TEXT = "\u00b1";
    private static final double STROKE = 0.085;
    private static final double CASING = 0.32;

    /** Width of a text in pixels. */
    double width(String text) {
        double width = 0;
        for (String part : parts(text)) {
            width += advance(part);
        }
        return width;
    }

    /** Draws a text whose base line starts at (x, y). */
    void draw(String text, double x, double y, Scalar colour) {
        stroke(text, x, y, colour, thickness(STROKE));
    }

    /** The same on paper-white, for a place on the film. */
    void drawCased(String text, double x, double y, Scalar colour) {
        stroke(text, x, y, Ink.PAPER, thickness(CASING));
        draw(text, x, y, colour);
    }

    /** Breaks a text into lines no wider than so many pixels; a word that is wider stands alone. */
    List<String> lines(String text, double mostPixels) {
        List<String> lines = new ArrayList<>();
        StringBuilder line = new StringBuilder();
        for (String word : text.split(" ")) {
            String longer = line.isEmpty() ? word : line + " " + word;
            if (!line.isEmpty() && width(longer) > mostPixels) {
                lines.add(line.toString());
                line.setLength(0);
                line.append(word);
            } else {
                line.setLength(0);
                line.append(longer);
            }
        }
        lines.add(line.toString());
        return lines;
    }

    private void stroke(String text, double x, double y, Scalar colour, int thickness) {
        double at = x;
        for (String part : parts(text)) {
            if (part.equals(PLUS_MINUS_TEXT)) {
                plusMinus(at, y, colour, thickness);
            } else {
                Imgproc.putText(
                        pen.picture(),
                        part,
                        new Point(Math.round(at), Math.round(y)),
                        FONT,
                        fontScale(),
                        colour,
                        thickness,
                        Imgproc.LINE_AA);
            }
            at += advance(part);
        }
    }

    private void plusMinus(double x, double y, Scalar colour, int thickness) {
        double size = pen.units(height);
        double middle = x + size * 0.42;
        double arm = size * 0.28;
        double centre = y - size * 0.52;
        double width = thickness / pen.scale();
        pen.line(middle - arm, centre, middle + arm, centre, width, colour);
        pen.line(middle, centre - arm, middle, centre + arm, width, colour);
        pen.line(middle - arm, y - size * 0.06, middle + arm, y - size * 0.06, width, colour);
    }

    private double advance(String part) {
        if (part.equals(PLUS_MINUS_TEXT)) {
            return pen.units(height) * 0.84;
        }
        Size size = Imgproc.getTextSize(part, FONT, fontScale(), 1, null);
        return size.width;
    }

    /** Runs of ASCII, and plus-minus signs by themselves. */
    private static List<String> parts(String text) {
        List<String> parts = new ArrayList<>();
        int from = 0;
        for (int i = 0; i <= text.length(); i++) {
            if (i == text.length() || text.charAt(i) == PLUS_MINUS) {
                if (i > from) {
                    parts.add(PlainText.ascii(text.substring(from, i)));
                }
                if (i < text.length()) {
                    parts.add(PLUS_MINUS_TEXT);
                }
                from = i + 1;
            }
        }
        return parts;
    }

    private double fontScale() {
        return pen.units(height) / CAPITALS;
    }

    private int thickness(double share) {
        return (int) Math.max(1, Math.round(pen.units(height) * share));
    }
}
