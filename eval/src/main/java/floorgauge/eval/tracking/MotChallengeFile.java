package floorgauge.eval.tracking;

import floorgauge.court.floor.FloorPoint;
import floorgauge.court.track.FilmTracks;
import floorgauge.court.track.ImageBox;
import floorgauge.court.track.PlayerObservation;
import floorgauge.court.track.PlayerTrack;
import java.io.BufferedReader;
import java.io.BufferedWriter;
import java.io.IOException;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;

/**
 * Tracks as MOTChallenge text (Leal-Taixé and others, 2015, "MOTChallenge 2015: towards a benchmark for multi-target
 * tracking", section on the data format): one line for each person in each frame, ten columns with commas between, {@code
 * frame, id, left, top, width, height, confidence, x, y, z}. Frames count from 1 in the text and from 0 here. Boxes are
 * pixels of the film as stored and are not shifted. The world columns hold metres in the court frame, z = 0 on the floor;
 * three times -1 where the floor is not known. Four times -1 for a box where only the floor is known.
 *
 * @param rows in order of frame, then of id; each id at most once in a frame
 */
public record MotChallengeFile(List<MotChallengeRow> rows) {

    /** What the frame numbers in a text count from. */
    public enum FirstFrame {
        /** As some programs write. */
        ZERO,
        /** As the format says. */
        ONE
    }

    private static final Comparator<MotChallengeRow> BY_FRAME_AND_ID =
            Comparator.comparingLong(MotChallengeRow::frame).thenComparingInt(MotChallengeRow::id);

    public MotChallengeFile {
        rows = rows.stream().sorted(BY_FRAME_AND_ID).toList();
        for (int i = 1; i < rows.size(); i++) {
            if (BY_FRAME_AND_ID.compare(rows.get(i - 1), rows.get(i)) == 0) {
                throw new IllegalArgumentException("id " + rows.get(i).id() + " stands twice in frame "
                        + rows.get(i).frame());
            }
        }
    }

    /** Every observation of every track. */
    public static MotChallengeFile of(FilmTracks tracks) {
        List<MotChallengeRow> rows = new ArrayList<>();
        for (PlayerTrack track : tracks.players()) {
            for (PlayerObservation seen : track.observations()) {
                rows.add(new MotChallengeRow(
                        seen.frame(),
                        track.id(),
                        seen.box(),
                        seen.score(),
                        Optional.of(seen.foot().mean())));
            }
        }
        return new MotChallengeFile(rows);
    }

    /**
     * Reads a text whose frames count from 1.
     *
     * @throws MotChallengeException if the file cannot be read or a line is not as expected
     */
    public static MotChallengeFile read(Path file) {
        return read(file, FirstFrame.ONE);
    }

    /**
     * Reads a text.
     *
     * @throws MotChallengeException if the file cannot be read or a line is not as expected
     */
    public static MotChallengeFile read(Path file, FirstFrame firstFrame) {
        MotChallengeParser parser = new MotChallengeParser(file, firstFrame);
        try (BufferedReader reader = Files.newBufferedReader(file, StandardCharsets.UTF_8)) {
            for (String line = reader.readLine(); line != null; line = reader.readLine()) {
                parser.accept(line);
            }
        } catch (NoSuchFileException e) {
            throw new MotChallengeException(file + ": no such file; expected MOTChallenge text", e);
        } catch (CharacterCodingException e) {
            throw new MotChallengeException(file + ": not UTF-8 text; expected MOTChallenge text", e);
        } catch (IOException e) {
            throw new MotChallengeException(file + ": cannot be read: " + e.getMessage(), e);
        }
        return new MotChallengeFile(parser.rows());
    }

    /** Writes the text beside the file's final name and moves it there, so that no half-written file is ever seen. */
    public void write(Path file) throws IOException {
        Path beside = file.resolveSibling(file.getFileName() + ".part");
        try (BufferedWriter writer = Files.newBufferedWriter(beside, StandardCharsets.UTF_8)) {
            for (MotChallengeRow row : rows) {
                writer.write(line(row));
                writer.write('\n');
            }
        }
        Files.move(beside, file, StandardCopyOption.REPLACE_EXISTING);
    }

    /**
     * The boxes frame by frame. The format lists no empty frames, so the sequence has every frame from the first of the film
     * to the last that either this text or {@code throughFrame} names.
     *
     * @param framesPerSecond makes times out of frames, above 0
     * @param throughFrame last frame of the film, from 0; -1 to end with the text
     */
    public TrackSequence<ImageBox> boxes(double framesPerSecond, long throughFrame) {
        return sequence(MotChallengeRow::box, framesPerSecond, throughFrame);
    }

    /** The floor points frame by frame, metres in the court frame; parameters as in {@link #boxes}. */
    public TrackSequence<FloorPoint> floor(double framesPerSecond, long throughFrame) {
        return sequence(MotChallengeRow::floor, framesPerSecond, throughFrame);
    }

    /** The last frame that has a row, from 0; -1 where there is none. */
    public long lastFrame() {
        return rows.isEmpty() ? -1 : rows.get(rows.size() - 1).frame();
    }

    private <T> TrackSequence<T> sequence(
            Function<MotChallengeRow, Optional<T>> place, double framesPerSecond, long throughFrame) {
        if (!(framesPerSecond > 0 && Double.isFinite(framesPerSecond))) {
            throw new IllegalArgumentException("frames a second must be above 0: " + framesPerSecond);
        }
        List<TrackFrame<T>> frames = new ArrayList<>();
        int next = 0;
        for (long frame = 0; frame <= Math.max(throughFrame, lastFrame()); frame++) {
            List<Sighting<T>> sightings = new ArrayList<>();
            for (; next < rows.size() && rows.get(next).frame() == frame; next++) {
                int id = rows.get(next).id();
                place.apply(rows.get(next)).ifPresent(p -> sightings.add(new Sighting<>(id, p)));
            }
            frames.add(new TrackFrame<>(frame, frame / framesPerSecond, sightings));
        }
        return new TrackSequence<>(frames);
    }

    private static String line(MotChallengeRow row) {
        String box = row.box()
                .map(b -> number(b.left()) + "," + number(b.top()) + "," + number(b.width()) + "," + number(b.height()))
                .orElse("-1,-1,-1,-1");
        String world = row.floor()
                .map(p -> number(p.xMetres()) + "," + number(p.yMetres()) + ",0")
                .orElse("-1,-1,-1");
        return (row.frame() + 1) + "," + row.id() + "," + box + "," + number(row.confidence()) + "," + world;
    }

    /** The shortest decimal that reads back as the same number, without an exponent for whole numbers. */
    private static String number(double value) {
        return value == Math.rint(value) && Math.abs(value) < 1e15
                ? Long.toString((long) value)
                : Double.toString(value);
    }
}
