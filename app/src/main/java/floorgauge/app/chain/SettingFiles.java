package floorgauge.app.chain;

import floorgauge.app.result.Digest;
import floorgauge.court.failure.MendableException;
import floorgauge.events.standards.Standards;
import floorgauge.events.standards.StandardsFile;
import java.io.IOException;
import java.nio.charset.CharacterCodingException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;

/** Reads the files that stand beside a film on the command line. */
public final class SettingFiles {

    /** The SHA-256 of a file. */
    String digest(Path file) {
        try {
            return Digest.ofFile(file);
        } catch (IOException e) {
            throw unreadable(file, e);
        }
    }

    /** The team's standards. */
    public Standards standards(Path file) {
        try {
            return StandardsFile.read(Files.readString(file), file.toString(), Standards.defaults());
        } catch (IOException e) {
            throw unreadable(file, e);
        }
    }

    private static MendableException unreadable(Path file, IOException e) {
        if (e instanceof NoSuchFileException) {
            return new MendableException("no such file: " + file + "; check the name and where you are", e);
        }
        if (e instanceof CharacterCodingException) {
            return new MendableException(file + " is not UTF-8 text", e);
        }
        return new MendableException("cannot read " + file + ": " + e.getMessage() + "; check its rights", e);
    }

    /** The text of a file. */
    String text(Path file) {
        try {
            return Files.readString(file);
        } catch (IOException e) {
            throw unreadable(file, e);
        }
    }
}
