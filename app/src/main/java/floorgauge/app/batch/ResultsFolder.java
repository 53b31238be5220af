package floorgauge.app.batch;

import floorgauge.app.result.FindingsJson;
import floorgauge.court.failure.MendableException;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.channels.OverlappingFileLockException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * The folder that a batch writes into, one folder a film. A film's results are written beside their place under a hidden
 * name and moved there when they are whole, so that a batch may be killed at any moment and run again. One batch at a time
 * holds it.
 */
public final class ResultsFolder implements AutoCloseable {

    private static final String FINDINGS = "findings.json";
    private static final String LOCK = ".floorgauge-lock";
    private static final int DIGEST_DIGITS = 8;

    private final Path folder;
    private final FileChannel lockFile;

    private ResultsFolder(Path folder, FileChannel lockFile) {
        this.folder = folder;
        this.lockFile = lockFile;
    }

    /** Writes a film's results into an empty folder. */
    @FunctionalInterface
    public interface Contents {
        void writeInto(Path folder) throws IOException;
    }

    /**
     * Makes the folder where need be and holds it.
     *
     * @throws MendableException where it cannot be written to, or another batch holds it
     */
    public static ResultsFolder open(Path folder) {
        FileChannel channel = null;
        try {
            Files.createDirectories(folder);
            channel = FileChannel.open(folder.resolve(LOCK), StandardOpenOption.CREATE, StandardOpenOption.WRITE);
            FileLock lock = channel.tryLock();
            if (lock != null) {
                return new ResultsFolder(folder, channel);
            }
        } catch (OverlappingFileLockException e) {
            // Held by this very process.
        } catch (FileAlreadyExistsException e) {
            throw new MendableException(folder + " is a file, not a folder; name another with --out", e);
        } catch (IOException e) {
            throw new MendableException(
                    "cannot write to " + folder + " (" + reason(e) + "); name another folder with --out", e);
        }
        closeQuietly(channel);
        throw new MendableException("another run is writing to " + folder + "; wait for it or name another with --out");
    }

    private static void closeQuietly(FileChannel channel) {
        try {
            if (channel != null) {
                channel.close();
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** The folder that holds the film's results of this run already; empty where it must be measured. */
    public Optional<Path> done(Path film, String filmSha256, String runKey) {
        return candidates(film, filmSha256).stream()
                .filter(place -> FindingsJson.made(place.resolve(FINDINGS))
                        .filter(made -> made.run().equals(runKey))
                        .isPresent())
                .findFirst();
    }

    /**
     * Writes a film's results and moves them to their place; an older result of the same film makes way, one of another film
     * of the same name never does.
     *
     * @return where they lie
     * @throws MendableException where they cannot be written
     */
    public Path write(Path film, String filmSha256, Contents contents) {
        Path place = placeFor(film, filmSha256);
        Path partial = folder.resolve("." + place.getFileName() + ".partial");
        Path earlier = folder.resolve("." + place.getFileName() + ".earlier");
        try {
            delete(partial);
            Files.createDirectory(partial);
            contents.writeInto(partial);
            delete(earlier);
            if (Files.exists(place)) {
                Files.move(place, earlier, StandardCopyOption.ATOMIC_MOVE);
            }
            Files.move(partial, place, StandardCopyOption.ATOMIC_MOVE);
            delete(earlier);
            return place;
        } catch (IOException e) {
            throw new MendableException(
                    "cannot write the results of " + film + " to " + folder + " (" + reason(e)
                            + "); make room or name another folder with --out",
                    e);
        } finally {
            deleteWhereLeft(partial);
        }
    }

    private Path placeFor(Path film, String filmSha256) {
        for (Path place : candidates(film, filmSha256)) {
            boolean ours = FindingsJson.made(place.resolve(FINDINGS))
                    .filter(made -> made.filmSha256().equals(filmSha256))
                    .isPresent();
            if (ours || !Files.exists(place)) {
                return place;
            }
        }
        throw new MendableException("the folder for the results of " + film + " in " + folder
                + " holds something else; move that away or name another with --out");
    }

    /** The film's own name, and the same with the beginning of its digest where another film has taken that. */
    private List<Path> candidates(Path film, String filmSha256) {
        String name = FolderName.of(film);
        return List.of(folder.resolve(name), folder.resolve(name + "-" + filmSha256.substring(0, DIGEST_DIGITS)));
    }

    private static void deleteWhereLeft(Path partial) {
        try {
            delete(partial);
        } catch (IOException e) {
            // The failure that left it is on its way to the user; the next run clears it again.
        }
    }

    private static void delete(Path tree) throws IOException {
        if (!Files.exists(tree)) {
            return;
        }
        List<Path> files;
        try (Stream<Path> walk = Files.walk(tree)) {
            files = walk.sorted(Comparator.reverseOrder()).toList();
        }
        for (Path file : files) {
            Files.delete(file);
        }
    }

    private static String reason(IOException e) {
        return e instanceof java.nio.file.AccessDeniedException
                ? "no right to write there"
                : e.getMessage() == null ? e.getClass().getSimpleName() : e.getMessage();
    }

    /** Lets the folder go. */
    @Override
    public void close() {
        closeQuietly(lockFile);
    }
}
