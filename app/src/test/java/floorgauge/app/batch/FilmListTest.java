package floorgauge.app.batch;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class FilmListTest {

    @TempDir
    private Path folder;

    @Test
    void nothingAskedForIsNoFilmAndNoProblem() {
        assertThat(FilmList.of(List.of())).isEqualTo(new FilmList(List.of(), List.of()));
    }

    @Test
    void anEmptyFolderIsAProblem() {
        FilmList list = FilmList.of(List.of(folder));
        assertThat(list.films()).isEmpty();
        assertThat(list.problems())
                .singleElement()
                .asString()
                .contains("no film in")
                .contains(folder.toString());
    }

    @Test
    void aMissingFileIsAProblemAndTheRestGoesOn() throws IOException {
        Path film = file("a.mp4");
        FilmList list = FilmList.of(List.of(folder.resolve("none.mp4"), film));
        assertThat(list.films()).containsExactly(film);
        assertThat(list.problems()).singleElement().asString().contains("none.mp4");
    }

    @Test
    void aFolderIsSearchedByNameAndEndingAndBelow() throws IOException {
        Path second = file("b.MOV");
        Path first = file("a b.mp4");
        Path below = file("c/d.webm");
        file("a b.truth.json");
        file("notes.txt");
        file(".hidden.mp4");
        file(".cache/e.mp4");
        file("mp4");
        FilmList list = FilmList.of(List.of(folder));
        assertThat(list.films()).containsExactly(first, second, below);
        assertThat(list.problems()).isEmpty();
    }

    @Test
    void aFilmNamedTwiceIsMeasuredOnce() throws IOException {
        Path film = file("a.mp4");
        assertThat(FilmList.of(List.of(film, folder, film)).films()).containsExactly(film);
    }

    @Test
    void aFileThatWasNamedIsTakenWhateverItEndsIn() throws IOException {
        Path film = file("-odd \"name\" ü.bin");
        assertThat(FilmList.of(List.of(film)).films()).containsExactly(film);
    }

    private Path file(String name) throws IOException {
        Path file = folder.resolve(name);
        Files.createDirectories(file.getParent());
        return Files.createFile(file);
    }
}
