package floorgauge.court.rules;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import floorgauge.court.failure.MendableException;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class GymFileTest {

    @TempDir
    private Path folder;

    private RuleSet read(String text) throws IOException {
        return GymFile.read(Files.writeString(folder.resolve("gym.yaml"), text));
    }

    private void refused(String text, String... says) {
        assertThatThrownBy(() -> read(text))
                .isInstanceOf(MendableException.class)
                .hasMessageContaining("gym.yaml")
                .message()
                .contains(says);
    }

    @Test
    void whatIsNotGivenIsTheBooks() throws IOException {
        RuleSet floor = read("name: hall\nlike: nfhs\n");
        assertThat(floor.name()).isEqualTo("hall");
        assertThat(floor.threePointRadiusMetres()).isEqualTo(RuleSet.nfhs().threePointRadiusMetres());
        assertThat(floor.paintedLines()).isEqualTo(RuleSet.nfhs().paintedLines());
        assertThat(floor.isSymmetric()).isTrue();
    }

    @Test
    void aShortCourt() throws IOException {
        RuleSet floor = read("name: hall\nlike: fiba\nlength: 24\nwidth: 13\n");
        assertThat(floor.rim(CourtEnd.POSITIVE_X).xMetres()).isEqualTo(12 - 1.575);
        assertThat(floor.widthMetres()).isEqualTo(13);
    }

    /** FIBA's three-on-three rules: 15 m wide, 11 m from the end line (from memory). */
    @Test
    void aCourtForThreeAgainstThree() throws IOException {
        RuleSet floor = read("name: three\nlike: fiba\nlength: 22\nunpainted: [negative-end, centre-circle]\n");
        assertThat(floor.paintedLines()).noneMatch(line -> line.name().startsWith("negative-end"));
        assertThat(floor.paintedLines()).anyMatch(line -> line.name().equals("centre-line"));
        assertThat(floor.isSymmetric()).isFalse();
        assertThat(floor.rim(CourtEnd.POSITIVE_X).xMetres()).isEqualTo(11 - 1.575);
    }

    @Test
    void badInputEachSaysWhatAndWhere() {
        refused("name: hall\n", "\"like\" is missing");
        refused("name: hall\nlike: nbl\n", "line 2", "nbl", "fiba, nba, ncaa, nfhs");
        refused("name: hall\nlike: fiba\nlength: -3\n", "line 3", "length", "above 0");
        refused("name: hall\nlike: fiba\nlength: NaN\n", "line 3", "finite");
        refused("name: hall\nlike: fiba\nlenght: 24\n", "line 3", "lenght");
        refused("name: hall\nlike: fiba\nunpainted: [key]\n", "line 3", "key", "free-throw-line");
        refused("name: hall\nlike: fiba\nlength: 10\n", "free-throw line");
        refused("name: hall\nlike: fiba\nwidth: 4\n", "laneWidth");
        refused("name: hall\nlike: fiba\nunpainted: [\"\"]\n", "no painted line");
    }
}
