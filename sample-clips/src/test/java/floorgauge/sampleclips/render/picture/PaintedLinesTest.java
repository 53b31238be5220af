package floorgauge.sampleclips.render.picture;

import static org.assertj.core.api.Assertions.assertThat;

import floorgauge.court.floor.FloorPoint;
import floorgauge.court.rules.CourtEnd;
import floorgauge.court.rules.PaintedLine;
import floorgauge.court.rules.RuleSet;
import floorgauge.sampleclips.render.camera.Camera;
import floorgauge.sampleclips.render.camera.CameraPath;
import floorgauge.sampleclips.render.camera.CameraStyle;
import floorgauge.sampleclips.render.gym.Gym;
import floorgauge.sampleclips.scene.Person;
import floorgauge.sampleclips.scene.Scene;
import floorgauge.sampleclips.scene.SceneState;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Rendered paint, measured in the picture, against the projected rule book. */
class PaintedLinesTest {

    private static final int WIDTH = 1280;
    private static final int HEIGHT = 720;
    /** Planks differ in tone: profiles are averaged over neighbours this many steps along the line each way. */
    private static final int ALONG = 5;

    /** Nobody there. */
    private record EmptyScene(RuleSet rules) implements Scene {

        @Override
        public String name() {
            return "empty";
        }

        @Override
        public double durationSeconds() {
            return 1;
        }

        @Override
        public List<Person> people() {
            return List.of();
        }

        @Override
        public SceneState at(double timeSeconds) {
            return new SceneState(timeSeconds, List.of(), Optional.empty());
        }
    }

    /** Where a line was found across itself. */
    private record Found(
            String line, double x, double y, double offsetPixels, double widthMetres, double metresPerPixel) {}

    /** A camera in motion, nearer to its lines, sees fewer of them, and more of them bent by its lens. */
    @ParameterizedTest
    @EnumSource(CameraStyle.class)
    void linesLieWithinThreeTenthsOfAPixelOfTheirProjection(CameraStyle style) {
        List<Found> found = measure(RuleSet.fiba(), style, 3);
        double[] errors = found.stream()
                .mapToDouble(Found::offsetPixels)
                .map(Math::abs)
                .sorted()
                .toArray();
        boolean still = style != CameraStyle.OPERATOR && style != CameraStyle.PHONE;
        double share = still ? 0.98 : 0.95;
        assertThat(errors.length).isGreaterThan(still ? 150 : 100);
        assertThat(errors[errors.length / 2]).as("median").isLessThan(0.1);
        assertThat(errors[(int) (errors.length * share)])
                .as("%.0f %% of %d", 100 * share, errors.length)
                .isLessThan(0.3);
    }

    /**
     * Line widths of the rule books: 5 cm (FIBA Official Basketball Rules, article 2.4), 2 inches (NBA and NFHS, rule 1; NCAA
     * from memory).
     */
    @ParameterizedTest
    @ValueSource(strings = {"fiba", "nba", "ncaa", "nfhs"})
    void linesAreAsWideAsTheRuleBookSays(String rules) {
        double width = rules.equals("fiba") ? 0.05 : 2 * 0.0254;
        List<Found> near = measure(RuleSet.named(rules).orElseThrow(), CameraStyle.TRIPOD_HIGH, 3).stream()
                .filter(f -> f.metresPerPixel() < 0.02)
                .toList();
        assertThat(near.size()).isGreaterThan(20);
        double[] widths = near.stream().mapToDouble(Found::widthMetres).sorted().toArray();
        assertThat(widths[widths.length / 2]).isBetween(width - 0.003, width + 0.003);
    }

    /** FIBA Official Basketball Rules, article 2.4.3 and 2.4.4: 4.90 m and 6.75 m to outer edges of 5 cm paint. */
    @Test
    void laneAndArcOfAFibaCourtMeasureAsTheBookSays() {
        List<Found> found = measure(RuleSet.fiba(), CameraStyle.TRIPOD_HIGH, 3);
        double low = place(found, "positive-end-lane-line-negative", 0);
        double high = place(found, "positive-end-lane-line-positive", 0);
        assertThat(Math.abs(high - low) + 0.05).isBetween(4.89, 4.91);
        assertThat(place(found, "positive-end-three-point-arc", 1) + 0.025).isBetween(6.74, 6.76);
    }

    /** Median place of a line's middle: y for a lane line, distance from the rim for the arc. */
    private static double place(List<Found> found, String line, int arc) {
        double[] places = found.stream()
                .filter(f -> f.line().equals(line))
                .mapToDouble(f -> arc == 1 ? Math.hypot(f.x() - (14 - 1.575), f.y()) : f.y())
                .sorted()
                .toArray();
        assertThat(places.length).as(line).isGreaterThan(5);
        return places[places.length / 2];
    }

    private static Camera camera(RuleSet rules, CameraStyle style, long seed) {
        return style.path(new EmptyScene(rules), Gym.clean(rules, 11), CourtEnd.POSITIVE_X, WIDTH, HEIGHT, seed)
                .at(0);
    }

    private static byte[] render(RuleSet rules, Camera camera) {
        RenderSettings settings = new RenderSettings(1, 0, 0.5, 0, 0, 2, 1);
        try (FrameRenderer renderer =
                new FrameRenderer(new EmptyScene(rules), Gym.clean(rules, 11), CameraPath.fixed(camera), settings)) {
            return renderer.render(0, 0).clone();
        }
    }

    private static List<Found> measure(RuleSet rules, CameraStyle style, long seed) {
        Camera camera = camera(rules, style, seed);
        Picture picture = new Picture(render(rules, camera));
        List<Found> found = new ArrayList<>();
        for (PaintedLine line : rules.paintedLines()) {
            for (int i = 1; i < 20; i++) {
                across(line, i / 20.0)
                        .flatMap(a -> look(line, a, camera, picture))
                        .ifPresent(found::add);
            }
        }
        return found;
    }

    /** A centre-line point and the unit direction across the line; none near other paint. */
    private static Optional<double[]> across(PaintedLine line, double fraction) {
        if (line instanceof PaintedLine.Straight s) {
            double dx = s.to().xMetres() - s.from().xMetres();
            double dy = s.to().yMetres() - s.from().yMetres();
            double n = Math.hypot(dx, dy);
            return Optional.of(new double[] {
                s.from().xMetres() + fraction * dx, s.from().yMetres() + fraction * dy, -dy / n, dx / n
            });
        }
        PaintedLine.Arc arc = (PaintedLine.Arc) line;
        FloorPoint p = arc.at(fraction);
        return Optional.of(new double[] {
            p.xMetres(),
            p.yMetres(),
            (p.xMetres() - arc.centre().xMetres()) / arc.radiusMetres(),
            (p.yMetres() - arc.centre().yMetres()) / arc.radiusMetres()
        });
    }

    /** The paint's two edges at half height of its light, found along the line's normal on the floor. */
    private static Optional<Found> look(PaintedLine line, double[] a, Camera camera, Picture picture) {
        double reach = 0.13;
        int steps = 261;
        double[] light = new double[steps];
        double pixels = 0;
        double[] before = null;
        for (int i = 0; i < steps; i++) {
            double t = -reach + 2 * reach * i / (steps - 1);
            double[] out = new double[3];
            for (int along = -ALONG; along <= ALONG; along++) {
                double x = a[0] + t * a[2] - 0.015 * along * a[3];
                double y = a[1] + t * a[3] + 0.015 * along * a[2];
                if (!camera.project(x, y, 0, out) || !picture.holds(out[0], out[1])) {
                    return Optional.empty();
                }
                light[i] += picture.light(out[0], out[1]) / (2 * ALONG + 1);
            }
            if (before != null) {
                pixels += Math.hypot(out[0] - before[0], out[1] - before[1]);
            }
            before = out;
        }
        double perPixel = 2 * reach / pixels;
        double bare = Math.max(quantile(light, 0, 40), quantile(light, steps - 40, steps));
        double top = Arrays.stream(light, steps / 2 - 15, steps / 2 + 15).max().orElse(0);
        boolean wide = perPixel < 0.05;
        boolean alone = Math.abs(quantile(light, 0, 40) - quantile(light, steps - 40, steps)) < 0.25 * (top - bare);
        if (!wide || !alone || top - bare < 0.06) {
            return Optional.empty();
        }
        double half = (bare + top) / 2;
        int low = steps / 2;
        while (low > 0 && light[low] > half) {
            low--;
        }
        int high = steps / 2;
        while (high < steps - 1 && light[high] > half) {
            high++;
        }
        double step = 2 * reach / (steps - 1);
        double middle = ((low + high) / 2.0 - (steps - 1) / 2.0) * step;
        return Optional.of(new Found(
                line.name(),
                a[0] + middle * a[2],
                a[1] + middle * a[3],
                middle / perPixel,
                (high - low - 1) * step,
                perPixel));
    }

    private static double quantile(double[] v, int from, int to) {
        double[] part = Arrays.copyOfRange(v, from, to);
        Arrays.sort(part);
        return part[part.length / 2];
    }

    /** Linear light between pixel centres; the sensor's curve is undone (sRGB, below its shoulder). */
    private record Picture(byte[] bgr) {

        boolean holds(double u, double v) {
            return u > 2 && v > 2 && u < WIDTH - 3 && v < HEIGHT - 3;
        }

        double light(double u, double v) {
            int x = (int) Math.floor(u);
            int y = (int) Math.floor(v);
            double fx = u - x;
            double fy = v - y;
            return (at(x, y) * (1 - fx) + at(x + 1, y) * fx) * (1 - fy)
                    + (at(x, y + 1) * (1 - fx) + at(x + 1, y + 1) * fx) * fy;
        }

        /** Blue tells white paint from wood best. */
        private double at(int x, int y) {
            double c = (bgr[3 * (y * WIDTH + x)] & 255) / 255.0;
            return c <= 0.04045 ? c / 12.92 : Math.pow((c + 0.055) / 1.055, 2.4);
        }
    }
}
