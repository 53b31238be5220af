package floorgauge.app.command;

import static org.assertj.core.api.Assertions.assertThat;

import floorgauge.app.store.Store;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What the command refuses before it listens, and its backups. */
class ReviewCommandTest {

    @TempDir
    private Path folder;

    private CommandRun review(Object... arguments) {
        String[] words = new String[arguments.length + 3];
        words[0] = "review";
        words[1] = "--season";
        words[2] = folder.resolve("season").toString();
        for (int i = 0; i < arguments.length; i++) {
            words[i + 3] = arguments[i].toString();
        }
        return CommandRun.of(words);
    }

    private void refused(CommandRun run, String why) {
        assertThat(run.exitCode()).isEqualTo(2);
        assertThat(run.err().lines())
                .singleElement()
                .satisfies(line -> assertThat(line).startsWith("floorgauge: ").contains(why));
        assertThat(folder.resolve("season")).doesNotExist();
    }

    @Test
    void aFolderThatIsNotThereLeavesNoStoreBehind() {
        refused(review(folder.resolve("none")), "no such folder of results");
    }

    @Test
    void badPortsUrlsAndFilmFoldersAreSaidInOneLine() throws IOException {
        Path results = Files.createDirectories(folder.resolve("results"));
        refused(review("--port", "70000"), "expected 0 to 65535");
        refused(review("--store", "jdbc:mysql://host/x"), "jdbc:postgresql:");
        refused(review(results, "--backup"), "--backup");
        refused(review("--prot", "80"), "Unknown option");
    }

    @Test
    void nothingIsBackedUpWhereNothingIsKept() {
        refused(review("--backup", folder.resolve("copy.db")), "nothing to back up");
        assertThat(folder.resolve("copy.db")).doesNotExist();
    }

    @Test
    void aBackupHoldsTheStore() throws IOException {
        Files.createDirectories(folder.resolve("season"));
        Store.open(folder.resolve("season/season.db")).keep("word", "kept");
        CommandRun run = review("--backup", folder.resolve("copy.db"));
        assertThat(run.exitCode()).isZero();
        assertThat(run.out()).contains("copied the store to").contains("copy.db");
        assertThat(Store.open(folder.resolve("copy.db")).setting("word")).contains("kept");
    }

    @Test
    void aMisspeltCommandIsAnsweredWithTheNearest() {
        CommandRun run = CommandRun.of("reviw");
        assertThat(run.exitCode()).isEqualTo(2);
        assertThat(run.err()).contains("did you mean review?");
    }
}
