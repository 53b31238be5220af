package floorgauge.app.result;

import floorgauge.vision.tracking.DetectionFate;
import java.io.BufferedWriter;
import java.io.IOException;
import java.io.OutputStreamWriter;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.zip.GZIPOutputStream;

/** What became of every box that the detector gave, as compressed text; docs/results.md describes the columns. */
public final class DetectionsText {

    /** The file's name in a film's folder. */
    public static final String FILE = "detections.csv.gz";

    private static final int BUFFER_BYTES = 1 << 16;

    private DetectionsText() {}

    /** Writes the boxes in order of time. The same boxes give the same bytes: the compressed file bears no time. */
    public static void write(List<DetectionFate> fates, Path file) throws IOException {
        try (Writer out = new BufferedWriter(new OutputStreamWriter(
                new GZIPOutputStream(Files.newOutputStream(file), BUFFER_BYTES), StandardCharsets.US_ASCII))) {
            out.write("frame,seconds,left,top,width,height,score,fate,player\n");
            for (DetectionFate f : fates) {
                out.write(String.format(
                        Locale.ROOT,
                        "%d,%.3f,%.1f,%.1f,%.1f,%.1f,%.2f,%s,%s\n",
                        f.frame(),
                        f.timeSeconds(),
                        f.box().left(),
                        f.box().top(),
                        f.box().width(),
                        f.box().height(),
                        f.score(),
                        f.fate().name().toLowerCase(Locale.ROOT).replace('_', ' '),
                        f.track() > 0 ? Integer.toString(f.track()) : ""));
            }
        }
    }
}
