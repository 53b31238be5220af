package floorgauge.app.result;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import floorgauge.app.InventedFilm;
import floorgauge.court.failure.MendableException;
import floorgauge.court.floor.FloorCovariance;
import floorgauge.court.floor.FloorEstimate;
import floorgauge.court.floor.FloorPoint;
import floorgauge.court.floor.PixelPoint;
import floorgauge.court.track.BallObservation;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class BallParquetTest {

    private static final List<BallObservation> BALL = List.of(
            new BallObservation(
                    3,
                    0.12,
                    new FloorEstimate(new FloorPoint(8.25, -1.5), new FloorCovariance(0.04, 0.01, 0.09)),
                    OptionalDouble.of(1.1),
                    Optional.of(new PixelPoint(610.5, 402.25)),
                    OptionalInt.of(2),
                    0.93),
            new BallObservation(
                    4,
                    0.16,
                    new FloorEstimate(new FloorPoint(8.5, -1.25), FloorCovariance.isotropic(0.4)),
                    OptionalDouble.empty(),
                    Optional.empty(),
                    OptionalInt.empty(),
                    0.4));

    @TempDir
    private Path folder;

    @Test
    void noFileIsNotTheSameAsNoBall() throws IOException {
        Path file = folder.resolve("ball.parquet");
        assertThat(BallParquet.read(file)).isEmpty();
        BallParquet.write(List.of(), file);
        assertThat(BallParquet.read(file)).contains(List.of());
    }

    @Test
    void theBallComesBackAsItWas() throws IOException {
        Path file = folder.resolve("it's a ball.parquet");
        BallParquet.write(BALL, file);
        assertThat(BallParquet.read(file)).contains(BALL);
        Path again = folder.resolve("again.parquet");
        BallParquet.write(BALL, again);
        assertThat(again).hasSameBinaryContentAs(file);
    }

    @Test
    void itIsReadWithTheTracksItLiesBeside() throws IOException {
        Path tracks = folder.resolve("tracks.parquet");
        TracksParquet.write(InventedFilm.tracks(), tracks);
        assertThat(TracksParquetReader.read(tracks).ball()).isEmpty();
        BallParquet.write(BALL, BallParquet.beside(tracks));
        assertThat(TracksParquetReader.read(tracks).ball()).contains(BALL);
    }

    @Test
    void anotherFileIsRefusedInOneLine() throws IOException {
        Path file = Files.writeString(folder.resolve("ball.parquet"), "PAR1");
        assertThatThrownBy(() -> BallParquet.read(file))
                .isInstanceOf(MendableException.class)
                .hasMessageContaining("ball.parquet");
    }
}
