package floorgauge.eval.tracking;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import floorgauge.court.floor.FloorCovariance;
import floorgauge.court.floor.FloorEstimate;
import floorgauge.court.floor.FloorPoint;
import floorgauge.court.track.Body;
import floorgauge.court.track.FilmTracks;
import floorgauge.court.track.FootSource;
import floorgauge.court.track.ImageBox;
import floorgauge.court.track.PlayerObservation;
import floorgauge.court.track.PlayerTrack;
import floorgauge.court.track.Team;
import floorgauge.eval.tracking.MotChallengeFile.FirstFrame;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class MotChallengeFileTest {

    @TempDir
    private Path folder;

    @Test
    void emptyText() throws IOException {
        MotChallengeFile file = MotChallengeFile.read(text(""));
        assertThat(file.rows()).isEmpty();
        assertThat(file.lastFrame()).isEqualTo(-1);
        assertThat(file.boxes(25, -1).frames()).isEmpty();
        assertThat(file.boxes(25, 2).frames()).hasSize(3);
    }

    @Test
    void readsTenColumnsWithWorld() throws IOException {
        MotChallengeFile file = MotChallengeFile.read(text("2,7,10.5,20,30,40,0.9,1.25,-3,0\n"));
        assertThat(file.rows())
                .containsExactly(new MotChallengeRow(
                        1, 7, Optional.of(new ImageBox(10.5, 20, 30, 40)), 0.9, Optional.of(new FloorPoint(1.25, -3))));
    }

    @Test
    void readsFewerColumnsBlankLinesAndSpaces() throws IOException {
        MotChallengeFile file = MotChallengeFile.read(text("\n1, 2, 3, 4, 5, 6\r\n\n"));
        assertThat(file.rows())
                .containsExactly(
                        new MotChallengeRow(0, 2, Optional.of(new ImageBox(3, 4, 5, 6)), -1, Optional.empty()));
    }

    @Test
    void minusOneMeansNotKnown() throws IOException {
        MotChallengeFile file = MotChallengeFile.read(text("1,1,-1,-1,-1,-1,1,2,3,0\n1,2,1,1,9,9,1,-1,-1,-1\n"));
        assertThat(file.rows().get(0).box()).isEmpty();
        assertThat(file.rows().get(0).floor()).contains(new FloorPoint(2, 3));
        assertThat(file.rows().get(1).floor()).isEmpty();
        assertThat(file.boxes(25, -1).frames().get(0).sightings()).hasSize(1);
        assertThat(file.floor(25, -1).frames().get(0).sightings()).hasSize(1);
    }

    @Test
    void framesMayCountFromZeroAndStandInAnyOrder() throws IOException {
        Path file = text("3,1,0,0,1,1\n0,1,0,0,1,1\n0,0,0,0,1,1\n");
        MotChallengeFile read = MotChallengeFile.read(file, FirstFrame.ZERO);
        assertThat(read.rows()).extracting(MotChallengeRow::frame).containsExactly(0L, 0L, 3L);
        assertThat(read.rows()).extracting(MotChallengeRow::id).containsExactly(0, 1, 1);
        TrackSequence<ImageBox> boxes = read.boxes(20, -1);
        assertThat(boxes.frames()).hasSize(4);
        assertThat(boxes.frames().get(3).timeSeconds()).isEqualTo(0.15);
        assertThat(boxes.frames().get(1).sightings()).isEmpty();
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "1,1,0,0,5 | all columns: expected 6 to 10 values with commas between, found 5",
                "1,1,0,0,5,5,1,1,1,1,1 | all columns: expected 6 to 10 values with commas between, found 11",
                "x,1,0,0,5,5 | column 1 (frame): expected a number, found 'x'",
                "1.5,1,0,0,5,5 | column 1 (frame): expected a whole number, found '1.5'",
                "0,1,0,0,5,5 | column 1 (frame): expected a frame from 1, found '0'",
                "1,-2,0,0,5,5 | column 2 (id): expected an id from 0 to 2147483647, found '-2'",
                "1,1,0,0,0,5 | column 5 (width): expected a size above 0, found '0'",
                "1,1,0,0,5,-3 | column 6 (height): expected a size above 0, found '-3'",
                "1,1,0,NaN,5,5 | column 4 (top): expected a finite number, found 'NaN'",
                "1,1,0,0,5,5,high | column 7 (confidence): expected a number, found 'high'",
                "1,1,0,0,5,5,1,1,,0 | column 9 (y): expected a number, found ''",
                "2,4,0,0,5,5 | column 2 (id): expected an id that frame 2 does not have yet (line 1), found '4'"
            })
    void saysWhereAndWhatWasExpected(String line, String message) throws IOException {
        Path file = text("2,4,0,0,5,5\n" + line + "\n");
        assertThatThrownBy(() -> MotChallengeFile.read(file))
                .isInstanceOf(MotChallengeException.class)
                .hasMessage(file + ", line 2, " + message);
    }

    @Test
    void saysWhenThereIsNoFileOrNoText() throws IOException {
        Path missing = folder.resolve("none.txt");
        assertThatThrownBy(() -> MotChallengeFile.read(missing))
                .hasMessage(missing + ": no such file; expected MOTChallenge text");
        Path bytes = Files.write(folder.resolve("bytes.txt"), new byte[] {(byte) 0xff, (byte) 0xfe, 0});
        assertThatThrownBy(() -> MotChallengeFile.read(bytes)).hasMessageContaining("not UTF-8 text");
        assertThatThrownBy(() -> MotChallengeFile.read(folder)).hasMessageContaining("cannot be read");
    }

    @Test
    void writesWhatItReads() throws IOException {
        String written = "1,1,0.5,2,30,40.25,0.75,-1.5,2,0\n1,2,-1,-1,-1,-1,1,3,4.125,0\n7,1,5,6,7,8,-1,-1,-1,-1\n";
        MotChallengeFile file = MotChallengeFile.read(text(written));
        Path copy = folder.resolve("copy.txt");
        file.write(copy);
        assertThat(copy).hasContent(written);
        assertThat(MotChallengeFile.read(copy)).isEqualTo(file);
        assertThat(folder.resolve("copy.txt.part")).doesNotExist();
    }

    @Test
    void takesTheTracksOfAFilm() {
        FilmTracks tracks = new FilmTracks(
                new TreeMap<>(java.util.Map.of(0L, 0.0, 1L, 0.04)),
                List.of(new PlayerTrack(3, Team.FIRST, 1, List.of(seen(1, 0.04)), List.of())),
                Optional.empty());
        MotChallengeFile file = MotChallengeFile.of(tracks);
        assertThat(file.rows())
                .containsExactly(new MotChallengeRow(
                        1, 3, Optional.of(new ImageBox(1, 2, 3, 4)), 0.5, Optional.of(new FloorPoint(5, 6))));
        assertThat(TrackSequence.floor(tracks).frames()).hasSize(2);
        assertThat(TrackSequence.floor(tracks).frames().get(1).sightings())
                .containsExactly(new Sighting<>(3, new FloorPoint(5, 6)));
        assertThat(TrackSequence.boxes(tracks).frames().get(0).sightings()).isEmpty();
        assertThat(TrackSequence.boxes(tracks).frames().get(1).sightings())
                .containsExactly(new Sighting<>(3, new ImageBox(1, 2, 3, 4)));
    }

    @Test
    void refusesTheSameIdTwiceInAFrame() {
        MotChallengeRow row = new MotChallengeRow(0, 1, Optional.empty(), 1, Optional.empty());
        assertThatThrownBy(() -> new MotChallengeFile(List.of(row, row))).hasMessageContaining("id 1 stands twice");
        assertThatThrownBy(() -> new MotChallengeRow(-1, 1, Optional.empty(), 1, Optional.empty()))
                .isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> new MotChallengeFile(List.of()).boxes(0, -1))
                .isInstanceOf(IllegalArgumentException.class);
    }

    private static PlayerObservation seen(long frame, double time) {
        return new PlayerObservation(
                frame,
                time,
                new FloorEstimate(new FloorPoint(5, 6), FloorCovariance.isotropic(0.1)),
                FootSource.ANKLES,
                Optional.of(new ImageBox(1, 2, 3, 4)),
                Optional.empty(),
                Body.UNSEEN,
                0.5);
    }

    private Path text(String content) throws IOException {
        return Files.writeString(folder.resolve("tracks.txt"), content, StandardCharsets.UTF_8);
    }
}
