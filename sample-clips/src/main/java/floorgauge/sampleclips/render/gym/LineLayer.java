package floorgauge.sampleclips.render.gym;

import floorgauge.court.rules.PaintedLine;
import java.util.List;
import java.util.Objects;

/**
 * Lines of one sport in one colour.
 *
 * @param sport what is played on them, lower case
 * @param rgb paint, 0xRRGGBB
 * @param wear 0 freshly painted to 1 mostly rubbed off
 */
public record LineLayer(String sport, List<PaintedLine> lines, int rgb, double wear) {

    public LineLayer {
        Objects.requireNonNull(sport, "sport");
        lines = List.copyOf(lines);
        if (rgb < 0 || rgb > 0xFFFFFF) {
            throw new IllegalArgumentException("a colour lies in 0x000000 to 0xFFFFFF: " + Integer.toHexString(rgb));
        }
        if (!(wear >= 0 && wear <= 1)) {
            throw new IllegalArgumentException("wear lies in 0 to 1: " + wear);
        }
    }
}
