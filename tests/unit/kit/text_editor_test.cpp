// Proves that editing keeps every word: typing, selecting, cutting, pasting, undoing, citing readings.

#include "ui/kit/text_editor.hpp"

#include <gtest/gtest.h>

#include <string>

namespace emberpath::kit {
namespace {

class Board final : public Clipboard {
  public:
    [[nodiscard]] std::string get() const override { return text; }
    void set(std::string_view utf8) override { text = utf8; }
    std::string text;
};

void type(TextEditor& editor, std::u32string_view text, int last_reading = 0) {
    for (const char32_t c : text) editor.type(c, last_reading);
}

TEST(Editor, TypesAtTheCaretAndReplacesTheSelection) {
    TextEditor editor("ab");
    editor.move(TextEditor::Step::character, false, false);
    type(editor, U"X");
    EXPECT_EQ(editor.text(), "aXb");
    editor.select_all();
    type(editor, U"½");
    EXPECT_EQ(editor.text(), "½");
}

TEST(Editor, UndoesWordByWordAndRedoes) {
    TextEditor editor;
    type(editor, U"one two three");
    ASSERT_TRUE(editor.undo());
    EXPECT_EQ(editor.text(), "one two ");
    ASSERT_TRUE(editor.undo());
    EXPECT_EQ(editor.text(), "one ");
    ASSERT_TRUE(editor.redo());
    EXPECT_EQ(editor.text(), "one two ");
    type(editor, U"x");
    EXPECT_FALSE(editor.redo()) << "typing ends what could be redone";
    while (editor.undo()) {
    }
    EXPECT_EQ(editor.text(), "");
}

TEST(Editor, RemovesByCharacterAndByWord) {
    TextEditor editor("gas pipe too small");
    editor.backspace(true);
    EXPECT_EQ(editor.text(), "gas pipe too ");
    editor.backspace();
    EXPECT_EQ(editor.text(), "gas pipe too");
    editor.move(TextEditor::Step::all, false, false);
    editor.erase(true);
    EXPECT_EQ(editor.text(), "pipe too");
    editor.backspace();
    EXPECT_EQ(editor.text(), "pipe too");
}

TEST(Editor, SelectsByWordAndLine) {
    TextEditor editor("one two\nthree");
    editor.move(TextEditor::Step::line, false, true);
    EXPECT_EQ(editor.selection_begin(), 8U);
    EXPECT_EQ(editor.selection_end(), 13U);
    editor.move(TextEditor::Step::character, false, false);
    EXPECT_EQ(editor.caret(), 8U);
    EXPECT_FALSE(editor.has_selection());
    editor.move(TextEditor::Step::word, false, false);
    EXPECT_EQ(editor.caret(), 4U);
}

TEST(Editor, CutsAndPastes) {
    Board board;
    TextEditor editor("one two");
    editor.move(TextEditor::Step::word, false, true);
    editor.cut(board);
    EXPECT_EQ(board.text, "two");
    EXPECT_EQ(editor.text(), "one ");
    editor.paste(board, false);
    EXPECT_EQ(editor.text(), "one two");
    EXPECT_TRUE(editor.undo());
    EXPECT_EQ(editor.text(), "one ");
}

TEST(Editor, APastedTextLosesControlCharactersAndInOneLineItsNewlines) {
    Board board;
    board.text = "a\r\nb\tc\x01";
    TextEditor one, many;
    one.paste(board, false);
    many.paste(board, true);
    EXPECT_EQ(one.text(), "a b c");
    EXPECT_EQ(many.text(), "a\nb c");
}

TEST(Citations, AppearWhenTheNumberOfAKnownReadingIsTyped) {
    TextEditor editor;
    type(editor, U"drops to 1.7 #5, so", 12);
    EXPECT_EQ(editor.text(), "drops to 1.7 #5, so");
    EXPECT_EQ(editor.characters().size(), 18U) << "a citation is one character";
    type(editor, U" #12", 12);
    EXPECT_EQ(cited_number(editor.characters().back()), 12);
}

TEST(Citations, OfUnknownReadingsStayText) {
    TextEditor editor;
    type(editor, U"#7", 6);
    EXPECT_EQ(editor.characters(), U"#7");
    type(editor, U" #69", 6);
    EXPECT_EQ(editor.text(), "#7 #69");
    EXPECT_EQ(editor.characters().back(), U'9') << "#6 is known, #69 is not";
}

TEST(Citations, AreRemovedAsOne) {
    TextEditor editor("see #5", 6);
    editor.backspace();
    EXPECT_EQ(editor.text(), "see ");
}

TEST(Citations, AreCopiedAsText) {
    Board board;
    TextEditor editor("see #5", 6);
    editor.select_all();
    editor.copy(board);
    EXPECT_EQ(board.text, "see #5");
}

}  // namespace
}  // namespace emberpath::kit
