package floorgauge.sampleclips.tracks;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import floorgauge.court.floor.FloorPoint;
import floorgauge.court.track.FilmTracks;
import floorgauge.court.track.FootSource;
import floorgauge.court.track.PlayerObservation;
import floorgauge.court.track.PlayerTrack;
import floorgauge.sampleclips.scenario.ScenarioLibrary;
import floorgauge.sampleclips.scene.Scene;
import org.junit.jupiter.api.Test;

class TrueTracksTest {

    private final Scene scene = ScenarioLibrary.load("pin-down-sound", 1);

    @Test
    void aFrameRateOfZeroIsRefused() {
        assertThatThrownBy(() -> TrueTracks.sample(scene, 0)).hasMessageContaining("above 0");
    }

    @Test
    void exactTracksAreTheScene() {
        FilmTracks tracks = TrueTracks.sample(scene, 29.97);
        assertThat(tracks.players()).hasSize(10);
        assertThat(tracks.frameTimesSeconds()).hasSize((int) Math.floor(scene.durationSeconds() * 29.97) + 1);
        for (PlayerTrack track : tracks.players()) {
            assertThat(track.observations())
                    .hasSameSizeAs(tracks.frameTimesSeconds().keySet());
            for (PlayerObservation o : track.observations()) {
                FloorPoint truth =
                        scene.at(o.timeSeconds()).people().get(track.id() - 1).position();
                assertThat(o.foot().mean()).isEqualTo(truth);
                assertThat(o.source()).isEqualTo(FootSource.TRUTH);
            }
        }
        assertThat(tracks.ball().orElseThrow())
                .hasSameSizeAs(tracks.frameTimesSeconds().keySet());
    }

    @Test
    void theMidpointOfTheFeetIsTheBodyAndAPlantedFootStays() {
        FilmTracks tracks = TrueTracks.sample(scene, 100);
        int stays = 0;
        int steps = 0;
        for (PlayerTrack track : tracks.players()) {
            PlayerObservation before = null;
            for (PlayerObservation o : track.observations()) {
                FloorPoint left = o.body().leftAnkle().orElseThrow().mean();
                FloorPoint right = o.body().rightAnkle().orElseThrow().mean();
                assertThat((left.xMetres() + right.xMetres()) / 2)
                        .isCloseTo(o.foot().mean().xMetres(), within(1e-9));
                if (before != null) {
                    double l = left.distanceTo(
                            before.body().leftAnkle().orElseThrow().mean());
                    double r = right.distanceTo(
                            before.body().rightAnkle().orElseThrow().mean());
                    steps++;
                    stays += Math.min(l, r) < 0.01 ? 1 : 0;
                }
                before = o;
            }
        }
        assertThat((double) stays / steps)
                .as("share of centiseconds in which a foot moves under 1 cm")
                .isGreaterThan(0.85);
    }

    @Test
    void noiseHasTheSizeThatItSays() {
        TrackNoise noise = new TrackNoise(0.2, 0.1, 0.3, 0, 0, 0, 0, 0);
        double sum = 0;
        int n = 0;
        long seed = 5;
        for (PlayerTrack track : TrueTracks.sample(scene, 50, noise, seed).players()) {
            for (PlayerObservation o : track.observations()) {
                FloorPoint truth =
                        scene.at(o.timeSeconds()).people().get(track.id() - 1).position();
                sum += Math.pow(o.foot().mean().xMetres() - truth.xMetres(), 2);
                n++;
            }
        }
        assertThat(Math.sqrt(sum / n)).as("seed " + seed).isCloseTo(0.2, within(0.02));
    }

    @Test
    void gapsTakeTheShareOfTimeThatTheirRateAndLengthGive() {
        TrackNoise noise = new TrackNoise(0.05, 0, 0.1, 30, 0.5, 0, 30, 0.5);
        long seen = 0;
        long frames = 0;
        for (long seed = 0; seed < 20; seed++) {
            FilmTracks tracks = TrueTracks.sample(scene, 25, noise, seed);
            for (PlayerTrack track : tracks.players()) {
                seen += track.observations().size();
                frames += tracks.frameTimesSeconds().size();
            }
        }
        // Gaps begin at rate r and last s on average; one that begins inside another only prolongs it: exp(-r s) is
        // seen.
        assertThat((double) seen / frames).isCloseTo(Math.exp(-0.25), within(0.03));
    }

    @Test
    void swapsExchangeTeamMatesOnly() {
        TrackNoise noise = new TrackNoise(0.05, 0, 0.1, 0, 0, 1, 0, 0);
        FilmTracks tracks = TrueTracks.sample(scene, 25, noise, 3);
        PlayerTrack user = tracks.players().get(1);
        PlayerObservation last = user.observations().get(user.observations().size() - 1);
        double[] distance = new double[10];
        for (int i = 0; i < 10; i++) {
            distance[i] = scene.at(last.timeSeconds())
                    .people()
                    .get(i)
                    .position()
                    .distanceTo(last.foot().mean());
        }
        assertThat(distance[4])
                .as("the user, who brushed the screener, goes on as the screener")
                .isLessThan(0.4);
    }

    @Test
    void theSameSeedGivesTheSameTracks() {
        assertThat(TrueTracks.sample(scene, 25, TrackNoise.POOR, 9))
                .isEqualTo(TrueTracks.sample(scene, 25, TrackNoise.POOR, 9));
    }
}
