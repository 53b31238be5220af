package floorgauge.app.chain;

import floorgauge.court.failure.MendableException;
import floorgauge.vision.film.FilmFrame;
import floorgauge.vision.film.FilmInfo;
import floorgauge.vision.film.FilmReader;
import floorgauge.vision.film.FilmSettings;
import floorgauge.vision.film.FilmWriter;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;

/**
 * Copies of films that a browser cannot play: H.264 in MP4, index first, at most 1280 pixels wide, upright, each picture at its
 * own time, without sound. A copy is made once and bears the film's digest; it is moved to its place when it is whole.
 */
public final class LightCopies {

    /** What a laptop's window shows. */
    private static final int MOST_WIDTH = 1280;

    /** Where neither the container nor its times tell (common practice). */
    private static final double USUAL_RATE = 25;

    private static final int DIGEST_DIGITS = 16;
    private static final Set<String> WEB_CODECS = Set.of("vp8", "vp9", "av1");

    private final Path folder;

    /** @param folder where copies lie; made when the first is */
    public LightCopies(Path folder) {
        this.folder = folder;
    }

    /**
     * Whether today's browsers play a film as it is: H.264 in MP4 or MOV, or WebM (common practice).
     *
     * @throws floorgauge.vision.film.FilmException where it is not a film that can be read
     */
    public static boolean isPlayable(Path film) {
        FilmInfo info = Films.info(film);
        boolean webm = film.getFileName().toString().toLowerCase(Locale.ROOT).endsWith(".webm");
        return info.container().equals("mov") && info.codec().equals("h264")
                || webm && WEB_CODECS.contains(info.codec());
    }

    /** The copy that was made of a film earlier. */
    public Optional<Path> made(String filmSha256) {
        Path copy = place(filmSha256);
        return Files.isRegularFile(copy) ? Optional.of(copy) : Optional.empty();
    }

    /**
     * Makes the copy, or finds it.
     *
     * @param filmSha256 the film's digest
     * @return where it lies
     * @throws MendableException where the film cannot be read or the copy not be written
     */
    public Path make(Path film, String filmSha256) {
        Optional<Path> earlier = made(filmSha256);
        if (earlier.isPresent()) {
            return earlier.get();
        }
        Path place = place(filmSha256);
        Path partial = folder.resolve("." + place.getFileName() + ".partial");
        try {
            Files.createDirectories(folder);
            copy(film, partial);
            Files.move(partial, place, StandardCopyOption.REPLACE_EXISTING, StandardCopyOption.ATOMIC_MOVE);
            return place;
        } catch (IOException e) {
            throw new MendableException(
                    "cannot write a playable copy of " + film + " to " + folder + " (" + e.getMessage()
                            + "); make room on the disk",
                    e);
        }
    }

    private static void copy(Path film, Path to) {
        try (FilmReader reader = FilmReader.open(film, MOST_WIDTH);
                FilmFrame frame = new FilmFrame()) {
            FilmInfo info = reader.info();
            double rate = info.nominalFramesPerSecond() > 0 ? info.nominalFramesPerSecond() : USUAL_RATE;
            try (FilmWriter writer = FilmWriter.create(to, FilmSettings.of(info.width(), info.height(), rate))) {
                while (reader.read(frame)) {
                    writer.write(frame.bgr(), Math.max(0, frame.timeSeconds()));
                }
            }
        }
    }

    private Path place(String filmSha256) {
        return folder.resolve(filmSha256.substring(0, DIGEST_DIGITS) + ".mp4");
    }
}
