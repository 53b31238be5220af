package floorgauge.sampleclips.truth;

import floorgauge.court.track.ImageBox;
import floorgauge.court.track.Team;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;

/**
 * Writes the players' true tracks as MOTChallenge text (Leal-Taixé and others, 2015): {@code frame, id, left, top, width,
 * height, confidence, x, y, z}. Frames count from 1; boxes are those of whole bodies; the confidence column holds the visible
 * fraction; x and y are the pelvis over the floor, court metres, z is 0. Players outside the picture have no line.
 */
public final class MotTruthWriter implements AutoCloseable {

    private final Writer out;

    /** @throws UncheckedIOException if the file cannot be written */
    public MotTruthWriter(Path file) {
        try {
            out = Files.newBufferedWriter(file, StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** Adds a frame; frames come in order. */
    public void write(FrameTruth frame) {
        for (PersonTruth p : frame.people()) {
            Team team = p.state().person().team();
            if (p.box().isPresent() && (team == Team.FIRST || team == Team.SECOND)) {
                line(frame.index() + 1, p, p.box().get());
            }
        }
    }

    private void line(long frame, PersonTruth p, ImageBox box) {
        String[] columns = {
            Long.toString(frame),
            Integer.toString(p.state().person().id()),
            TruthWriter.rounded(box.left(), 1),
            TruthWriter.rounded(box.top(), 1),
            TruthWriter.rounded(box.width(), 1),
            TruthWriter.rounded(box.height(), 1),
            TruthWriter.rounded(p.visibleFraction(), 3),
            TruthWriter.rounded(p.state().position().xMetres(), 3),
            TruthWriter.rounded(p.state().position().yMetres(), 3),
            "0"
        };
        try {
            out.write(String.join(",", columns));
            out.write('\n');
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    @Override
    public void close() {
        try {
            out.close();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
