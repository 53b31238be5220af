package floorgauge.app.result;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import floorgauge.app.InventedFilm;
import floorgauge.court.failure.MendableException;
import floorgauge.court.track.Appearance;
import floorgauge.court.track.FilmTracks;
import floorgauge.court.track.JerseyReading;
import floorgauge.court.track.PlayerTrack;
import floorgauge.events.finding.Finding;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class FindingsJsonReaderTest {

    @Test
    void refusesWhatIsNotAFileOfFindings(@TempDir Path folder) throws IOException {
        assertThatThrownBy(() -> FindingsJsonReader.read(folder.resolve("none.json")))
                .isInstanceOf(MendableException.class)
                .hasMessageContaining("none.json");
        Path empty = Files.writeString(folder.resolve("empty.json"), "{}");
        assertThatThrownBy(() -> FindingsJsonReader.read(empty)).hasMessageContaining("not a file of findings");
        Path cut = Files.writeString(folder.resolve("cut.json"), "{\"format\":\n");
        assertThatThrownBy(() -> FindingsJsonReader.read(cut)).hasMessageContaining("not JSON");
    }

    @Test
    void readsWhatWasWritten(@TempDir Path folder) throws IOException {
        MeasuredFilm measured = InventedFilm.measured();
        Path file = folder.resolve("findings.json");
        FindingsJson.write(measured, file);
        FindingsDocument read = FindingsJsonReader.read(file);
        assertThat(read.film()).isEqualTo(measured.film());
        assertThat(read.settings()).isEqualTo(measured.settings());
        assertThat(read.findings().all()).isEqualTo(measured.findings().all());
        assertThat(read.findings().possessions().get(0).possession())
                .isEqualTo(measured.findings().possessions().get(0).possession());
        assertThat(read.findings().possessions().get(0).spacing())
                .hasSameSizeAs(measured.findings().possessions().get(0).spacing());
        assertThat(read.court().pixelToFloor()).isEqualTo(measured.court().pixelToFloor());
    }

    @Test
    void whatAPlayerLooksLikeComesBack(@TempDir Path folder) throws IOException {
        MeasuredFilm film = InventedFilm.measured();
        Appearance seen = new Appearance(Optional.of(new JerseyReading(31, 0.72)), OptionalInt.of(0x0a1b2c));
        List<PlayerTrack> tracks = film.tracks().players().stream()
                .map(t -> new PlayerTrack(
                        t.id(),
                        t.team(),
                        t.teamProbability(),
                        t.observations(),
                        t.doubts(),
                        t.id() == 2 ? seen : Appearance.UNSEEN))
                .toList();
        Path file = folder.resolve("findings.json");
        FindingsJson.write(
                new MeasuredFilm(
                        film.film(),
                        film.settings(),
                        film.court(),
                        new FilmTracks(film.tracks().frameTimesSeconds(), tracks, Optional.empty()),
                        film.findings()),
                file);
        assertThat(FindingsJsonReader.read(file).players())
                .extracting(FindingsDocument.PlayerSpan::appearance)
                .startsWith(Appearance.UNSEEN, seen, Appearance.UNSEEN);
        String wrong = Files.readString(file).replace("#0a1b2c", "blue");
        assertThatThrownBy(() -> FindingsJsonReader.read(Files.writeString(folder.resolve("wrong.json"), wrong)))
                .isInstanceOf(MendableException.class)
                .hasMessageContaining("shirt");
    }

    @Test
    void oneFindingComesBackFromItsText() {
        for (Finding finding : InventedFilm.measured().findings().all()) {
            assertThat(FindingText.read(FindingText.write(finding))).isEqualTo(finding);
        }
    }
}
