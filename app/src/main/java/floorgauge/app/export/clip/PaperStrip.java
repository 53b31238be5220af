package floorgauge.app.export.clip;

import floorgauge.app.drawing.FigureText;
import floorgauge.app.export.ChosenFinding;
import floorgauge.app.export.Cut;
import floorgauge.app.export.PlainText;
import floorgauge.events.finding.Finding;
import floorgauge.events.finding.Tick;
import java.util.List;
import org.opencv.core.Scalar;

/** The strip of paper below the picture: what it is, the finding's sentence, and a rule in seconds on which a mark moves. */
final class PaperStrip {

    /** Height in units of a picture 720 high. */
    static final double HEIGHT = 150;

    private static final double SIDE = 26;
    private static final double HEAD_HEIGHT = 11;
    private static final double SENTENCE_HEIGHT = 15;
    private static final double SMALL_HEIGHT = 9.5;
    private static final double RULE_Y = 126;
    private static final int MOST_LINES = 2;

    private final String head;
    private final ChosenFinding chosen;
    private final Cut cut;

    /** @param filmName as on the sheet */
    PaperStrip(String filmName, ChosenFinding chosen, Cut cut) {
        Finding finding = chosen.finding();
        String label = finding.label().isEmpty() ? "" : ", " + finding.label();
        this.head = filmName + "   possession " + chosen.possession() + "   finding " + chosen.number() + ": "
                + finding.kind().words() + label + ", " + FigureText.sureness(finding.probability());
        this.chosen = chosen;
        this.cut = cut;
    }

    /**
     * Draws.
     *
     * @param top first row of the strip, pixels
     * @param timeSeconds where the mark stands
     */
    void draw(Pen pen, double top, double timeSeconds) {
        double width = pen.picture().cols();
        pen.box(0, top, width, pen.picture().rows(), Ink.PAPER);
        pen.line(0, top, width, top, 1.5, Ink.INK);
        Scalar kind = chosen.finding().kind().isFlag() ? Ink.ACCENT : Ink.QUIET;
        new Lettering(pen, HEAD_HEIGHT).draw(head, pen.units(SIDE), top + pen.units(24), kind);
        Lettering sentence = new Lettering(pen, SENTENCE_HEIGHT);
        List<String> lines =
                sentence.lines(chosen.finding().sentence().replace('\u00a0', ' '), width - 2 * pen.units(SIDE));
        for (int i = 0; i < Math.min(MOST_LINES, lines.size()); i++) {
            String more = i == MOST_LINES - 1 && lines.size() > MOST_LINES ? " ..." : "";
            sentence.draw(lines.get(i) + more, pen.units(SIDE), top + pen.units(52 + 25 * i), Ink.INK);
        }
        rule(pen, top + pen.units(RULE_Y), timeSeconds);
    }

    private void rule(Pen pen, double y, double timeSeconds) {
        double left = pen.units(SIDE);
        double right = pen.picture().cols() - pen.units(SIDE);
        pen.line(left, y, right, y, 1, Ink.INK);
        for (long tenth = (long) Math.ceil(cut.fromSeconds() * 10); tenth <= cut.toSeconds() * 10; tenth++) {
            double x = x(pen, tenth / 10.0);
            boolean half = tenth % 5 == 0;
            if (half || cut.toSeconds() - cut.fromSeconds() <= 12) {
                pen.line(x, y, x, y + pen.units(half ? 7 : 3), 1, Ink.INK);
            }
        }
        Lettering small = new Lettering(pen, SMALL_HEIGHT);
        double free = left;
        for (Tick tick : chosen.finding().ticks()) {
            if (tick.timeSeconds() < cut.fromSeconds() || tick.timeSeconds() > cut.toSeconds()) {
                continue;
            }
            double x = x(pen, tick.timeSeconds());
            String words = PlainText.ascii(tick.words());
            double textX = Math.max(free, Math.min(right - small.width(words), x - small.width(words) / 2));
            pen.line(x, y - pen.units(7), x, y + pen.units(7), 2, Ink.INK);
            if (textX - x < pen.units(40)) {
                small.draw(words, textX, y - pen.units(11), Ink.QUIET);
                free = textX + small.width(words) + pen.units(8);
            }
        }
        double now = x(pen, Math.max(cut.fromSeconds(), Math.min(cut.toSeconds(), timeSeconds)));
        double size = pen.units(6);
        pen.fill(
                List.of(
                        new double[] {now, y + pen.units(2)},
                        new double[] {now - size, y + pen.units(13)},
                        new double[] {now + size, y + pen.units(13)}),
                Ink.INK);
        String time = FigureText.time(timeSeconds);
        small.draw(time, Math.min(right - small.width(time), now + size + pen.units(3)), y + pen.units(19), Ink.INK);
    }

    private double x(Pen pen, double timeSeconds) {
        double side = pen.units(SIDE);
        double share = (timeSeconds - cut.fromSeconds()) / (cut.toSeconds() - cut.fromSeconds());
        return side + share * (pen.picture().cols() - 2 * side);
    }
}
