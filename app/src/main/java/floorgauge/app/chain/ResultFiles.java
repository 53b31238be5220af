package floorgauge.app.chain;

import floorgauge.app.batch.ResultsFolder;
import floorgauge.app.result.BallParquet;
import floorgauge.app.result.DetectionsText;
import floorgauge.app.result.FindingsJson;
import floorgauge.app.result.MeasuredFilm;
import floorgauge.app.result.TracksParquet;
import floorgauge.app.sheet.Sheet;
import floorgauge.app.sheet.SheetThresholds;
import floorgauge.app.sheet.ShownFrame;
import floorgauge.eval.tracking.MotChallengeFile;
import floorgauge.vision.tracking.DetectionFate;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;

/**
 * The files of one film.
 *
 * @param measured what was measured
 * @param frames the decisive frames of each finding
 * @param thresholds standards drawn into the chart
 * @param fates of the detector's boxes; none where there was no film
 */
record ResultFiles(
        MeasuredFilm measured, List<List<ShownFrame>> frames, SheetThresholds thresholds, List<DetectionFate> fates)
        implements ResultsFolder.Contents {

    /** {@code findings.json} last: where it stands, all stand. */
    @Override
    public void writeInto(Path folder) throws IOException {
        TracksParquet.write(measured.tracks(), folder.resolve("tracks.parquet"));
        if (measured.tracks().ball().isPresent()) {
            BallParquet.write(measured.tracks().ball().get(), folder.resolve(BallParquet.FILE));
        }
        if (!fates.isEmpty()) {
            DetectionsText.write(fates, folder.resolve(DetectionsText.FILE));
        }
        MotChallengeFile.of(measured.tracks()).write(folder.resolve("tracks.mot.txt"));
        Sheet.write(measured, frames, thresholds, folder.resolve("sheet.html"));
        FindingsJson.write(measured, folder.resolve("findings.json"));
    }
}
