package floorgauge.app.batch;

import java.nio.file.Path;
import java.util.regex.Pattern;

/** The name of a film's folder of results: the film's own name without its ending, made safe for every file system. */
final class FolderName {

    /** What Windows refuses in names, and what breaks a line. */
    private static final Pattern REFUSED = Pattern.compile("[<>:\"/\\\\|?*\\p{Cntrl}\\u2028\\u2029]");

    /** A leading dot hides a folder, a leading dash reads as an option; trailing dots and spaces are lost on Windows. */
    private static final Pattern LEADING = Pattern.compile("^[-.\\s]+");

    private static final Pattern TRAILING = Pattern.compile("[.\\s]+$");

    /** File systems take 255 bytes; a character needs at most four. */
    private static final int MOST_CHARACTERS = 50;

    private FolderName() {}

    static String of(Path film) {
        Path fileName = film.getFileName();
        String name = fileName == null ? "" : fileName.toString();
        int dot = name.lastIndexOf('.');
        String stem = dot > 0 ? name.substring(0, dot) : name;
        String safe = REFUSED.matcher(stem).replaceAll("_");
        safe = LEADING.matcher(safe).replaceFirst("_");
        if (safe.codePointCount(0, safe.length()) > MOST_CHARACTERS) {
            safe = safe.substring(0, safe.offsetByCodePoints(0, MOST_CHARACTERS));
        }
        safe = TRAILING.matcher(safe).replaceFirst("");
        return safe.isEmpty() ? "film" : safe;
    }
}
