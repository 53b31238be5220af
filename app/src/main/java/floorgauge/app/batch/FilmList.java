package floorgauge.app.batch;

import floorgauge.court.failure.MendableException;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.FileVisitOption;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.stream.Stream;

/**
 * The films that files and folders on a command line stand for, in the order given, folders in the order of their names,
 * each film once.
 *
 * <p>A file that was named is taken as a film whatever its name ends in. In a folder, and in the folders below it, only
 * files with a film's ending are taken, so that points files, labels and pictures beside the films are left alone. Hidden
 * files and folders are left out.
 *
 * @param films the films; may be empty
 * @param problems one line for each input that led to no film: it does not exist, cannot be looked into, or holds none
 */
public record FilmList(List<Path> films, List<String> problems) {

    /**
     * Endings of the containers that cameras, phones and screen recorders write. A GIF is taken where it is named alone:
     * most of those that lie in folders are drawings.
     */
    private static final Set<String> ENDINGS = Set.of(
            "mp4", "m4v", "mov", "mkv", "webm", "avi", "mpg", "mpeg", "mts", "m2ts", "ts", "wmv", "flv", "3gp", "ogv",
            "mxf", "asf");

    public FilmList {
        films = List.copyOf(films);
        problems = List.copyOf(problems);
    }

    /** Finds the films. */
    public static FilmList of(List<Path> inputs) {
        Set<Path> films = new LinkedHashSet<>();
        List<String> problems = new ArrayList<>();
        for (Path input : inputs) {
            try {
                films.addAll(filmsAt(input));
            } catch (MendableException e) {
                problems.add(e.getMessage());
            }
        }
        return new FilmList(new ArrayList<>(films), problems);
    }

    private static List<Path> filmsAt(Path input) {
        if (Files.isDirectory(input)) {
            return inFolder(input);
        }
        if (!Files.exists(input)) {
            throw new MendableException("no such file or folder: " + input + "; check the name and where you are");
        }
        return List.of(input.normalize());
    }

    private static List<Path> inFolder(Path folder) {
        List<Path> films;
        try (Stream<Path> files = Files.walk(folder, FileVisitOption.FOLLOW_LINKS)) {
            films = files.filter(file -> !isHidden(folder, file))
                    .filter(FilmList::endsLikeAFilm)
                    .filter(Files::isRegularFile)
                    .map(Path::normalize)
                    .sorted()
                    .toList();
        } catch (IOException | UncheckedIOException e) {
            throw new MendableException("cannot look into " + folder + ": " + e.getMessage() + "; check its rights", e);
        }
        if (films.isEmpty()) {
            throw new MendableException("no film in " + folder + "; films end in .mp4, .mov, .mkv, .avi and the like");
        }
        return films;
    }

    private static boolean isHidden(Path folder, Path file) {
        for (Path part : folder.relativize(file)) {
            if (part.toString().startsWith(".")) {
                return true;
            }
        }
        return false;
    }

    private static boolean endsLikeAFilm(Path file) {
        String name = file.getFileName() == null ? "" : file.getFileName().toString();
        int dot = name.lastIndexOf('.');
        return dot > 0 && ENDINGS.contains(name.substring(dot + 1).toLowerCase(Locale.ROOT));
    }
}
