package floorgauge.events.diagram;

import floorgauge.events.step.StepKind;
import java.util.List;

/** Writes a layout as SVG: floor, strokes, bars, marks, numbers. */
final class PanelDrawing {

    private static final double PEN = 0.38;
    private static final double SHIFT_PEN = 0.28;
    private static final double BAR_PEN = 0.75;
    private static final double BAR_HALF = 1.75;
    private static final double ARROW_LENGTH = 1.75;
    private static final double ARROW_HALF = 0.68;
    static final String PASS_DASHES = "1.35 0.85";
    private static final double TOOTH = 1.15;
    private static final double TOOTH_HEIGHT = 0.62;
    private static final double HANDOFF_HALF = 1.25;

    private final SvgText svg;
    private final Page page;
    private final PanelLayout layout;

    PanelDrawing(SvgText svg, Page page, PanelLayout layout) {
        this.svg = svg;
        this.page = page;
        this.layout = layout;
    }

    void draw() {
        FloorLines.draw(svg, page);
        layout.strokes().forEach(this::stroke);
        DotPen pen = new DotPen(
                svg,
                page,
                layout.dots(),
                layout.strokes().stream().map(Stroke::line).toList(),
                layout.numbers().stream().map(PlacedNumber::at).toList());
        layout.dots().stream().filter(d -> !d.attacking()).forEach(pen::draw);
        layout.dots().stream().filter(PlayerDot::attacking).forEach(pen::draw);
        for (PlacedNumber number : layout.numbers()) {
            svg.disc(number.at(), PlacedNumber.RADIUS);
            svg.text(number.at(), PlacedNumber.SIZE, Integer.toString(number.number()), true, true);
        }
    }

    private void stroke(Stroke stroke) {
        switch (stroke.step().kind()) {
            case DRIBBLE -> {
                svg.line(Polyline.zigzag(stroke.line(), TOOTH_HEIGHT, TOOTH, 0.5, ARROW_LENGTH + 0.9), PEN, "");
                arrow(stroke.line());
            }
            case PASS, TURNOVER -> {
                svg.line(shortened(stroke.line()), PEN, PASS_DASHES);
                arrow(stroke.line());
            }
            case SHOT -> shot(stroke.line());
            case HANDOFF -> handoff(stroke.line());
            case SCREEN -> {
                svg.line(stroke.line(), PEN, "");
                bar(stroke.line());
            }
            case CUT, SHIFT -> {
                svg.line(shortened(stroke.line()), stroke.step().kind() == StepKind.CUT ? PEN : SHIFT_PEN, "");
                arrow(stroke.line());
            }
        }
    }

    private static List<double[]> shortened(List<double[]> line) {
        return Polyline.piece(line, 0, Math.max(0.1, Polyline.length(line) - ARROW_LENGTH * 0.7));
    }

    private void arrow(List<double[]> line) {
        Arrowhead.draw(svg, line, ARROW_LENGTH, ARROW_HALF);
    }

    private void bar(List<double[]> line) {
        double whole = Polyline.length(line);
        double[] tip = Polyline.at(line, whole);
        double[] u = Polyline.unit(Polyline.at(line, whole - 2), tip);
        svg.line(List.of(Arrowhead.back(tip, u, 0, BAR_HALF), Arrowhead.back(tip, u, 0, -BAR_HALF)), BAR_PEN, "");
    }

    private void handoff(List<double[]> line) {
        double[] u = Polyline.unit(line.get(0), line.get(1));
        double[] middle = Polyline.between(line.get(0), line.get(1), 0.6);
        for (double behind : new double[] {-0.4, 0.4}) {
            svg.line(
                    List.of(
                            Arrowhead.back(middle, u, behind, HANDOFF_HALF),
                            Arrowhead.back(middle, u, behind, -HANDOFF_HALF)),
                    PEN,
                    "");
        }
    }

    private void shot(List<double[]> line) {
        double[] tip = line.get(1);
        double[] u = Polyline.unit(line.get(0), tip);
        for (double aside : new double[] {-0.32, 0.32}) {
            double[] from = Arrowhead.back(line.get(0), u, 0, aside);
            svg.line(List.of(from, Arrowhead.back(tip, u, ARROW_LENGTH * 0.8, aside)), SHIFT_PEN, "");
        }
        svg.solid(List.of(
                tip,
                Arrowhead.back(tip, u, ARROW_LENGTH, ARROW_HALF * 1.5),
                Arrowhead.back(tip, u, ARROW_LENGTH, -ARROW_HALF * 1.5)));
    }
}
