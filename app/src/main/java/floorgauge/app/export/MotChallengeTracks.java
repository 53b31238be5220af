package floorgauge.app.export;

import floorgauge.app.result.FilmSource;
import floorgauge.eval.tracking.MotChallengeFile;
import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;

/**
 * Tracks as MOTChallenge has them (Milan and others, "MOT16", 2016, section 3.3; {@code seqinfo.ini} from the benchmark's own
 * folders, from memory): ten columns, frames from 1, boxes in pixels; the three world columns hold floor metres.
 */
final class MotChallengeTracks implements Exporter {

    private static final int RATE_DECIMALS = 5;

    @Override
    public void write(ExportOrder order, ExportFolder folder) {
        for (FilmChoice choice : order.films()) {
            MeasuredFolder film = choice.film();
            MotChallengeFile tracks = MotChallengeFile.of(film.tracks());
            folder.write(film.name() + ".txt", tracks::write);
            folder.write(
                    film.name() + ".seqinfo.ini",
                    file -> Files.writeString(file, sequence(film), StandardCharsets.UTF_8));
        }
    }

    private static String sequence(MeasuredFolder film) {
        FilmSource source = film.findings().film();
        BigDecimal rate = Numbers.rounded(film.frameRate().perSecond(), RATE_DECIMALS);
        return "[Sequence]\nname=" + film.name() + "\nimDir=img1\nframeRate=" + rate.toPlainString() + "\nseqLength="
                + source.frames() + "\nimWidth=" + source.widthPixels() + "\nimHeight=" + source.heightPixels()
                + "\nimExt=.jpg\n";
    }
}
