package floorgauge.vision.film;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import org.bytedeco.javacpp.BytePointer;
import org.bytedeco.javacpp.Loader;

/** A film's file name: what can be said about it before it is opened, and how FFmpeg wants it written. */
final class FilmFile {

    private FilmFile() {}

    /** @throws FilmException if the path is not a file with something in it that may be read */
    static void requireReadable(Path film) {
        if (!Files.exists(film)) {
            throw new FilmException(film, "no such file; check the name");
        }
        if (Files.isDirectory(film)) {
            throw new FilmException(film, "is a folder; name a film in it");
        }
        if (!Files.isReadable(film)) {
            throw new FilmException(film, "may not be read; check the file's permissions");
        }
        if (isEmpty(film)) {
            throw new FilmException(film, "is an empty file; copy the film again");
        }
    }

    private static boolean isEmpty(Path film) {
        try {
            return Files.size(film) == 0;
        } catch (IOException e) {
            throw new FilmException(film, "cannot be read; check the disk or card it lies on", e);
        }
    }

    /**
     * The name as a zero-ended string for FFmpeg, which takes UTF-8 on Windows and the file system's own bytes elsewhere.
     * The leading {@code file:} keeps a colon in a name from being read as a protocol.
     */
    static BytePointer nativeName(Path film) {
        Path absolute = film.toAbsolutePath();
        byte[] name = Loader.getPlatform().startsWith("windows")
                ? absolute.toString().getBytes(StandardCharsets.UTF_8)
                // A path's address keeps its bytes exactly, whatever the locale makes of them.
                : percentDecoded(absolute.toUri().getRawPath());
        byte[] prefix = "file:".getBytes(StandardCharsets.US_ASCII);
        BytePointer pointer = new BytePointer(prefix.length + name.length + 1L);
        pointer.put(prefix, 0, prefix.length);
        pointer.position(prefix.length).put(name, 0, name.length);
        pointer.position(prefix.length + (long) name.length).put((byte) 0);
        return pointer.position(0);
    }

    private static byte[] percentDecoded(String rawPath) {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream(rawPath.length());
        for (int i = 0; i < rawPath.length(); i++) {
            char c = rawPath.charAt(i);
            if (c == '%') {
                bytes.write(Integer.parseInt(rawPath.substring(i + 1, i + 3), 16));
                i += 2;
            } else {
                bytes.write(c);
            }
        }
        return bytes.toByteArray();
    }
}
