package floorgauge.app.result;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;

/** SHA-256 in lower-case hexadecimal. */
public final class Digest {

    private static final int BLOCK_BYTES = 1 << 16;

    private Digest() {}

    public static String ofText(String text) {
        return HexFormat.of().formatHex(sha256().digest(text.getBytes(StandardCharsets.UTF_8)));
    }

    public static String ofFile(Path file) throws IOException {
        MessageDigest digest = sha256();
        byte[] block = new byte[BLOCK_BYTES];
        try (InputStream in = Files.newInputStream(file)) {
            for (int read = in.read(block); read >= 0; read = in.read(block)) {
                digest.update(block, 0, read);
            }
        }
        return HexFormat.of().formatHex(digest.digest());
    }

    private static MessageDigest sha256() {
        try {
            return MessageDigest.getInstance("SHA-256");
        } catch (NoSuchAlgorithmException e) {
            // Every Java platform is required to have it (java.security.MessageDigest).
            throw new IllegalStateException(e);
        }
    }
}
