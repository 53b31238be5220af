package floorgauge.app.export;

import floorgauge.app.export.clip.ClipPlayer;
import floorgauge.app.export.clip.ClipSize;
import floorgauge.court.failure.MendableException;
import floorgauge.vision.film.FilmWriter;
import java.nio.file.Path;
import java.util.List;

/** All findings one after the other in one film, at the size of the first film; films of other shapes stand in the middle. */
final class Reel implements Exporter {

    /** Between two clips, so that no picture of one bears the time of another. */
    private static final double GAP_SECONDS = 0.001;

    @Override
    public void write(ExportOrder order, ExportFolder folder) {
        List<FilmChoice> films =
                order.films().stream().filter(f -> !f.findings().isEmpty()).toList();
        if (films.isEmpty()) {
            throw new MendableException("no finding was chosen, so there is nothing for a reel; choose other kinds");
        }
        List<Path> files = films.stream()
                .map(f -> order.search().require(f.film().findings().film()))
                .toList();
        ClipSize size = ClipPlayer.sizeOf(files.get(0));
        folder.write("reel.mp4", file -> {
            try (FilmWriter writer = FilmWriter.create(file, ClipFiles.settings(size, films.get(0)))) {
                double start = 0;
                for (int i = 0; i < films.size(); i++) {
                    start = play(order, films.get(i), files.get(i), size, writer, start);
                }
            }
        });
    }

    private static double play(
            ExportOrder order, FilmChoice film, Path file, ClipSize size, FilmWriter writer, double from) {
        double start = from;
        try (ClipPlayer player = new ClipPlayer(film, file, size, ClipFiles.HOLD_SECONDS)) {
            for (ChosenFinding finding : film.findings()) {
                double begun = start;
                start += GAP_SECONDS
                        + player.play(
                                finding,
                                order.cut(film, finding),
                                (picture, time) -> writer.write(picture, begun + time));
            }
        }
        return start;
    }
}
