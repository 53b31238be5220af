package floorgauge.vision.film;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;

/** A film's identity: the SHA-256 of its bytes, so that a renamed or moved film is still the same one. */
public final class FilmHash {

    private static final int BLOCK_BYTES = 1 << 20;

    private FilmHash() {}

    /**
     * @param film a file
     * @return 64 lower-case hexadecimal digits
     * @throws FilmException if the file cannot be read
     */
    public static String sha256(Path film) {
        MessageDigest digest = sha256();
        byte[] block = new byte[BLOCK_BYTES];
        try (InputStream in = Files.newInputStream(film)) {
            for (int n = in.read(block); n >= 0; n = in.read(block)) {
                digest.update(block, 0, n);
            }
        } catch (IOException e) {
            FilmFile.requireReadable(film);
            throw new FilmException(film, "cannot be read to its end; check the disk or card it lies on", e);
        }
        return HexFormat.of().formatHex(digest.digest());
    }

    private static MessageDigest sha256() {
        try {
            return MessageDigest.getInstance("SHA-256");
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java platform has SHA-256", e);
        }
    }
}
