package floorgauge.app.review;

import io.javalin.http.Context;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.io.RandomAccessFile;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Hands a film out by ranges of bytes (RFC 9110, section 14): one range a request, which is all that browsers ask for. */
final class FilmBytes {

    private static final Pattern RANGE = Pattern.compile("bytes=(\\d{0,18})-(\\d{0,18})");
    private static final int BLOCK_BYTES = 1 << 16;

    private FilmBytes() {}

    /** First and last byte, both counted. */
    record Range(long first, long last) {

        long length() {
            return last - first + 1;
        }
    }

    /**
     * What a range header asks of a file.
     *
     * @return empty where the header is missing, or of a form that is answered with the whole
     * @throws Guard.Refused with 416 where no byte of the file is asked for
     */
    static Optional<Range> asked(String header, long size) {
        Matcher range = header == null ? null : RANGE.matcher(header.strip());
        if (range == null
                || !range.matches()
                || (range.group(1).isEmpty() && range.group(2).isEmpty())) {
            return Optional.empty();
        }
        if (range.group(1).isEmpty()) {
            long suffix = Long.parseLong(range.group(2));
            if (suffix == 0 || size == 0) {
                throw new Guard.Refused(416, "no such part of the film");
            }
            return Optional.of(new Range(Math.max(0, size - suffix), size - 1));
        }
        long first = Long.parseLong(range.group(1));
        long last = range.group(2).isEmpty() ? size - 1 : Math.min(size - 1, Long.parseLong(range.group(2)));
        if (first >= size || last < first) {
            throw new Guard.Refused(416, "no such part of the film");
        }
        return Optional.of(new Range(first, last));
    }

    /** Answers with the film, or the part that was asked for. */
    static void answer(Context request, Path film) {
        try {
            long size = Files.size(film);
            Optional<Range> range = asked(request.req().getHeader("Range"), size);
            request.res().setHeader("Accept-Ranges", "bytes");
            request.res().setContentType(type(film));
            range.ifPresent(r -> {
                request.status(206);
                request.res().setHeader("Content-Range", "bytes " + r.first() + "-" + r.last() + "/" + size);
            });
            Range whole = range.orElse(new Range(0, size - 1));
            request.res().setContentLengthLong(whole.length());
            if (!request.method().name().equals("HEAD")) {
                copy(film, whole, request.outputStream());
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static void copy(Path film, Range range, OutputStream out) throws IOException {
        byte[] block = new byte[BLOCK_BYTES];
        try (RandomAccessFile file = new RandomAccessFile(film.toFile(), "r")) {
            file.seek(range.first());
            long left = range.length();
            while (left > 0) {
                int read = file.read(block, 0, (int) Math.min(block.length, left));
                if (read < 0) {
                    return;
                }
                if (!sent(out, block, read)) {
                    return;
                }
                left -= read;
            }
        }
    }

    /** A browser that seeks hangs up on the part it no longer wants; that is nothing to report. */
    private static boolean sent(OutputStream out, byte[] block, int length) {
        try {
            out.write(block, 0, length);
            return true;
        } catch (IOException e) {
            return false;
        }
    }

    private static String type(Path film) {
        String name = film.getFileName().toString().toLowerCase(Locale.ROOT);
        if (name.endsWith(".webm")) {
            return "video/webm";
        }
        return name.endsWith(".mp4") || name.endsWith(".m4v") || name.endsWith(".mov")
                ? "video/mp4"
                : "application/octet-stream";
    }

    /** Whether browsers play a film as it is: H.264 in MP4, or WebM, by its first bytes and its ending. */
    static boolean isPlayable(Path film) {
        if (type(film).equals("application/octet-stream")) {
            return false;
        }
        try (InputStream in = Files.newInputStream(film)) {
            byte[] head = in.readNBytes(12);
            boolean mp4 = head.length == 12 && head[4] == 'f' && head[5] == 't' && head[6] == 'y' && head[7] == 'p';
            boolean webm = head.length == 12 && (head[0] & 0xff) == 0x1a && (head[1] & 0xff) == 0x45;
            return mp4 || webm;
        } catch (IOException e) {
            return false;
        }
    }
}
