package floorgauge.app.export;

import floorgauge.court.failure.MendableException;
import java.io.IOException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.ArrayList;
import java.util.List;

/** Where exported files go; each is written beside its place under a hidden name and moved there when it is whole. */
public final class ExportFolder {

    private final Path folder;
    private final List<Path> written = new ArrayList<>();

    private ExportFolder(Path folder) {
        this.folder = folder;
    }

    /** Writes a file. */
    @FunctionalInterface
    public interface Contents {
        void writeTo(Path file) throws IOException;
    }

    /** @throws MendableException where it cannot be made */
    public static ExportFolder open(Path folder) {
        try {
            Files.createDirectories(folder);
            return new ExportFolder(folder);
        } catch (FileAlreadyExistsException e) {
            throw new MendableException(folder + " is a file, not a folder; name another with --out", e);
        } catch (IOException e) {
            throw new MendableException("cannot write to " + folder + "; name another folder with --out", e);
        }
    }

    /**
     * Writes a file of this name; one that was there makes way.
     *
     * @throws MendableException where it cannot be written
     */
    public void write(String name, Contents contents) {
        Path place = folder.resolve(name);
        // The ending stays, since libraries tell formats by it.
        Path partial = folder.resolve(".partial-" + name);
        try {
            contents.writeTo(partial);
            Files.move(partial, place, StandardCopyOption.REPLACE_EXISTING, StandardCopyOption.ATOMIC_MOVE);
            written.add(place);
        } catch (IOException e) {
            throw new MendableException(
                    "cannot write " + place + " (" + e.getMessage() + "); make room or name another folder with --out",
                    e);
        } finally {
            deleteWhereLeft(partial);
        }
    }

    /** What was written, in order. */
    public List<Path> written() {
        return List.copyOf(written);
    }

    private static void deleteWhereLeft(Path partial) {
        try {
            Files.deleteIfExists(partial);
        } catch (IOException e) {
            // The failure that left it is on its way to the user; the next export writes over it.
        }
    }
}
