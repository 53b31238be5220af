package floorgauge.app.export;

import floorgauge.app.export.clip.ClipPlayer;
import floorgauge.app.export.clip.ClipSize;
import floorgauge.vision.film.FilmSettings;
import floorgauge.vision.film.FilmWriter;
import java.nio.file.Path;
import java.util.Locale;

/** A clip a finding: H.264 in MP4 with what was measured burnt in. */
final class ClipFiles implements Exporter {

    /** Long enough to read a figure. */
    static final double HOLD_SECONDS = 1.2;

    @Override
    public void write(ExportOrder order, ExportFolder folder) {
        for (FilmChoice choice : order.films()) {
            if (choice.findings().isEmpty()) {
                continue;
            }
            Path film = order.search().require(choice.film().findings().film());
            ClipSize size = ClipPlayer.sizeOf(film);
            try (ClipPlayer player = new ClipPlayer(choice, film, size, HOLD_SECONDS)) {
                for (ChosenFinding finding : choice.findings()) {
                    folder.write(
                            name(choice, finding),
                            file -> write(file, player, size, choice, finding, order.cut(choice, finding)));
                }
            }
        }
    }

    private static void write(
            Path file, ClipPlayer player, ClipSize size, FilmChoice choice, ChosenFinding finding, Cut cut) {
        try (FilmWriter writer = FilmWriter.create(file, settings(size, choice))) {
            player.play(finding, cut, writer::write);
        }
    }

    static FilmSettings settings(ClipSize size, FilmChoice choice) {
        return FilmSettings.of(size.width(), size.height(), choice.film().framesPerSecond());
    }

    private static String name(FilmChoice choice, ChosenFinding finding) {
        return String.format(
                Locale.ROOT,
                "%s-%03d-%s.mp4",
                choice.film().name(),
                finding.number(),
                finding.finding().kind().words().replace(' ', '-'));
    }
}
