package floorgauge.app.export;

import floorgauge.app.InventedFilm;
import floorgauge.app.result.CourtReading;
import floorgauge.app.result.Digest;
import floorgauge.app.result.FilmSource;
import floorgauge.app.result.FindingsJson;
import floorgauge.app.result.MeasuredFilm;
import floorgauge.app.result.TracksParquet;
import floorgauge.court.calibration.OpenCv;
import floorgauge.court.floor.FloorPoint;
import floorgauge.court.floor.PixelPoint;
import floorgauge.eval.tracking.MotChallengeFile;
import floorgauge.vision.film.FilmSettings;
import floorgauge.vision.film.FilmWriter;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.opencv.core.CvType;
import org.opencv.core.Mat;
import org.opencv.core.MatOfPoint2f;
import org.opencv.core.Point;
import org.opencv.core.Scalar;
import org.opencv.imgproc.Imgproc;

/** Results of the invented film, and a film of plain grey of its length to go with them. */
final class ExportedFilms {

    private ExportedFilms() {}

    /** Writes results as measure does. */
    static Path results(Path folder, String name, String filmName, String sha256) throws IOException {
        MeasuredFilm invented = InventedFilm.measured();
        CourtReading court = new CourtReading(
                invented.court().rules(),
                "lines",
                "good",
                "",
                "still",
                pixelToFloor(),
                invented.court().floorToPixel());
        MeasuredFilm measured = new MeasuredFilm(
                new FilmSource(filmName, sha256, InventedFilm.WIDTH, InventedFilm.HEIGHT, 6, 150),
                invented.settings(),
                court,
                invented.tracks(),
                invented.findings());
        Path place = Files.createDirectories(folder.resolve(name));
        FindingsJson.write(measured, place.resolve("findings.json"));
        TracksParquet.write(measured.tracks(), place.resolve("tracks.parquet"));
        MotChallengeFile.of(measured.tracks()).write(place.resolve("tracks.mot.txt"));
        return place;
    }

    /** The homography of the invented film's camera, through four places on its floor. */
    static List<Double> pixelToFloor() {
        OpenCv.load();
        List<Point> pixels = new ArrayList<>();
        List<Point> floor = new ArrayList<>();
        for (double[] place : new double[][] {{4, -6}, {12, -6}, {4, 6}, {12, 6}}) {
            PixelPoint pixel =
                    InventedFilm.pixelAt(new FloorPoint(place[0], place[1]), 0).orElseThrow();
            pixels.add(new Point(pixel.x(), pixel.y()));
            floor.add(new Point(place[0], place[1]));
        }
        Mat homography = Imgproc.getPerspectiveTransform(
                new MatOfPoint2f(pixels.toArray(new Point[0])), new MatOfPoint2f(floor.toArray(new Point[0])));
        double[] rows = new double[9];
        homography.get(0, 0, rows);
        return Arrays.stream(rows).boxed().toList();
    }

    static Path results(Path folder, String name) throws IOException {
        return results(folder, name, name + ".mp4", Digest.ofText(name));
    }

    /** Everything, without the film. */
    static ExportOrder everything(Path... results) {
        return new ExportOrder(
                MeasuredFolder.at(List.of(results)).stream()
                        .map(film -> FilmChoice.of(film, (f, finding) -> true))
                        .toList(),
                new Cut.Room(2, 2),
                new FilmSearch(List.of()));
    }

    /** Six seconds of grey at 25 frames a second. */
    static Path grey(Path file) {
        Mat grey = new Mat(InventedFilm.HEIGHT, InventedFilm.WIDTH, CvType.CV_8UC3, new Scalar(120, 120, 120));
        try (FilmWriter writer =
                FilmWriter.create(file, FilmSettings.of(InventedFilm.WIDTH, InventedFilm.HEIGHT, 25))) {
            for (int i = 0; i < 150; i++) {
                writer.write(grey, i * 0.04);
            }
        }
        grey.release();
        return file;
    }
}
