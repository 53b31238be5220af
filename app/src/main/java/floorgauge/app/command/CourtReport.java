package floorgauge.app.command;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.SerializationFeature;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import floorgauge.app.chain.CourtSurvey;
import floorgauge.court.calibration.CalibrationStatus;
import floorgauge.court.calibration.CourtCalibration;
import floorgauge.court.calibration.CourtOverTime;
import floorgauge.court.calibration.Coverage;
import floorgauge.court.calibration.Lens;
import floorgauge.court.calibration.PointResidual;
import floorgauge.court.failure.MendableException;
import floorgauge.court.floor.FloorPoint;
import floorgauge.court.rules.CourtEnd;
import floorgauge.vision.film.FilmFrame;
import floorgauge.vision.film.FilmReader;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;
import java.util.OptionalDouble;
import org.opencv.imgcodecs.Imgcodecs;

/**
 * What is said of a court that was found.
 *
 * @param film in which
 * @param survey where
 */
record CourtReport(Path film, CourtSurvey survey) {

    void print(PrintWriter out) {
        CourtCalibration found = survey.calibration();
        out.println(FailureReport.oneLine(
                film + ": " + status() + ", " + found.rules().name() + " court from " + survey.source()));
        out.println(FailureReport.oneLine(found.reason()));
        survey.saved()
                .filter(words -> !words.equals(found.reason()))
                .ifPresent(words -> out.println(FailureReport.oneLine(words)));
        printStretches(out);
        errors().forEach((place, error) -> out.println(
                String.format(Locale.ROOT, "  %-28s the calibration adds an error of %.2f m", place, error)));
        survey.points().ifPresent(fit -> {
            for (PointResidual residual : fit.residuals()) {
                boolean suspect = fit.suspect().filter(residual.label()::equals).isPresent();
                out.println(String.format(
                        Locale.ROOT,
                        "  %-28s off by %.1f pixels, %.2f m%s",
                        residual.label(),
                        Math.hypot(residual.xPixels(), residual.yPixels()),
                        residual.floorMetres(),
                        suspect ? ", contradicts the others and was left out" : ""));
            }
        });
        out.flush();
    }

    private void printStretches(PrintWriter out) {
        if (survey.courts().isStill()) {
            return;
        }
        out.println(String.format(
                Locale.ROOT,
                "The camera moves; the court was followed through %.0f in 100 of the pictures. Where it is first seen:",
                100 * survey.courts().foundShare()));
        for (CourtOverTime.Stretch stretch : survey.courts().stretches()) {
            if (stretch.status() == CalibrationStatus.NONE) {
                out.println(FailureReport.oneLine(String.format(
                        Locale.ROOT,
                        "  none from %.2f to %.2f s: %s",
                        stretch.startSeconds(),
                        stretch.endSeconds(),
                        stretch.reason())));
            }
        }
    }

    /** The error that the calibration adds at places a coach knows, where they are in sight. */
    private Map<String, Double> errors() {
        Map<String, Double> errors = new LinkedHashMap<>();
        CourtCalibration found = survey.calibration();
        if (found.status() == CalibrationStatus.NONE) {
            return errors;
        }
        for (CourtEnd end : CourtEnd.values()) {
            FloorPoint rim = found.rules().rim(end);
            FloorPoint top =
                    new FloorPoint(rim.xMetres() - end.sign() * found.rules().threePointRadiusMetres(), rim.yMetres());
            String name = end == CourtEnd.NEGATIVE_X ? "left end, " : "right end, ";
            add(errors, name + "under the rim", rim);
            add(errors, name + "top of the arc", top);
        }
        add(errors, "centre of the court", new FloorPoint(0, 0));
        return errors;
    }

    private void add(Map<String, Double> errors, String name, FloorPoint place) {
        CourtCalibration found = survey.calibration();
        OptionalDouble error = found.supports(place) ? found.errorOfCalibration(place) : OptionalDouble.empty();
        error.ifPresent(e -> errors.put(name, e));
    }

    String json() {
        CourtCalibration found = survey.calibration();
        ObjectMapper mapper = new ObjectMapper().enable(SerializationFeature.INDENT_OUTPUT);
        ObjectNode root = mapper.createObjectNode();
        root.put("film", film.getFileName().toString());
        root.put("rules", found.rules().name());
        root.put("source", survey.source());
        root.put("status", status());
        root.put("reason", found.reason());
        root.put("widthPixels", found.widthPixels());
        root.put("heightPixels", found.heightPixels());
        if (found.status() != CalibrationStatus.NONE) {
            numbers(root.putArray("pixelToFloor"), found.homographyPixelToFloor());
            lens(root.putObject("lens"), found.projection().orElseThrow().lens());
            numbers(root.putArray("parameterCovariance"), found.covariance().rowMajor());
            coverage(root.putObject("coverage"), found.coverage());
        }
        root.put("camera", survey.courts().isStill() ? "still" : "moving");
        if (!survey.courts().isStill()) {
            stretches(root.putArray("stretches"));
        }
        survey.points().ifPresent(fit -> {
            ArrayNode residuals = root.putArray("points");
            for (PointResidual residual : fit.residuals()) {
                residuals
                        .addObject()
                        .put("label", residual.label())
                        .put("xPixels", residual.xPixels())
                        .put("yPixels", residual.yPixels())
                        .put("floorMetres", residual.floorMetres())
                        .put(
                                "suspect",
                                fit.suspect().filter(residual.label()::equals).isPresent());
            }
        });
        try {
            return mapper.writeValueAsString(root) + "\n";
        } catch (JsonProcessingException e) {
            throw new IllegalStateException(e);
        }
    }

    private static void lens(ObjectNode into, Lens lens) {
        numbers(into.putArray("centre"), new double[] {lens.centreX(), lens.centreY()});
        into.put("radiusPixels", lens.radiusPixels());
        numbers(into.putArray("strengths"), new double[] {lens.k(), lens.l()});
    }

    private static void coverage(ObjectNode into, Coverage coverage) {
        ArrayNode hull = into.putArray("hull");
        for (FloorPoint corner : coverage.hull()) {
            hull.addArray().add(corner.xMetres()).add(corner.yMetres());
        }
        into.put("marginMetres", coverage.marginMetres());
        into.put("areaSquareMetres", coverage.areaSquareMetres());
    }

    private void stretches(ArrayNode into) {
        for (CourtOverTime.Stretch stretch : survey.courts().stretches()) {
            into.addObject()
                    .put("startSeconds", stretch.startSeconds())
                    .put("endSeconds", stretch.endSeconds())
                    .put("status", stretch.status().name().toLowerCase(Locale.ROOT))
                    .put("reason", stretch.reason());
        }
    }

    private static void numbers(ArrayNode array, double[] values) {
        for (double value : values) {
            array.add(value);
        }
    }

    /** Draws the court over the film's first frame, or where the camera moves, over the first in which it was found. */
    void drawTo(Path picture) {
        try (FilmReader reader = FilmReader.open(film);
                FilmFrame frame = new FilmFrame()) {
            if (!reader.read(frame)) {
                throw new MendableException(film + " holds no picture");
            }
            while (survey.calibration().status() != CalibrationStatus.NONE
                    && survey.courts().at(frame.timeSeconds()).status() == CalibrationStatus.NONE
                    && reader.read(frame)) {
                // The next frame may be the first with a court.
            }
            survey.draw(frame.bgr(), frame.timeSeconds());
            if (!Imgcodecs.imwrite(picture.toString(), frame.bgr())) {
                throw new MendableException("cannot write " + picture + "; name a .png or .jpg where you may write");
            }
        }
    }

    private String status() {
        return survey.calibration().status().name().toLowerCase(Locale.ROOT);
    }
}
