// SPDX-License-Identifier: MIT
#include <layshaft/show/escape.hpp>

#include <gtest/gtest.h>

namespace {
using namespace layshaft;

TEST(Escape, LeavesPlainTextAsItIs) {
  const char* plain = "Bramble 310, \xC3\xBC\xE2\x82\xAC";
  EXPECT_EQ(escape_text(plain), plain);
  EXPECT_EQ(escape_html(plain), plain);
  EXPECT_EQ(escape_latex(plain), plain);
  EXPECT_EQ(escape_markdown(plain), plain);
}

TEST(Escape, TakesControlCharactersOutOfEveryForm) {
  const std::string hostile("a\x1B[31mb\nc\x7F\td\0e", 14);
  for (const std::string& text : {escape_text(hostile), escape_html(hostile), escape_latex(hostile)}) {
    EXPECT_EQ(text, "a [31mb c  d e");
  }
  EXPECT_EQ(escape_markdown(hostile), "a \\[31mb c  d e");
}

// 2026-11-26: U+009B begins a command to a terminal as ESC [ does, and U+202E turns the rest of a line round.
TEST(Escape, TakesSteeringCharactersOfMoreThanAByteOutAsWell) {
  for (const std::string& text : {escape_text("a\xc2\x9b"
                                              "b\xe2\x80\xae"
                                              "c\xff"),
                                  escape_html("a\xc2\x9b"
                                              "b\xe2\x80\xae"
                                              "c\xff"),
                                  escape_markdown("a\xc2\x9b"
                                                  "b\xe2\x80\xae"
                                                  "c\xff")})
    EXPECT_EQ(text, "a b c\xff");
}

TEST(Escape, MakesHtmlHarmlessInTextAndInAttributes) {
  EXPECT_EQ(escape_html("<b a='1' c=\"2\">&amp;"), "&lt;b a=&#39;1&#39; c=&quot;2&quot;&gt;&amp;amp;");
}

TEST(Escape, MakesLatexHarmless) {
  EXPECT_EQ(escape_latex("\\input{x} 5% $a_1^2$ #&~<>"),
            "\\textbackslash{}input\\{x\\} 5\\% \\$a\\_1\\textasciicircum{}2\\$ \\#\\&\\textasciitilde{}\\textless{}"
            "\\textgreater{}");
}

TEST(Escape, MakesMarkdownHarmless) {
  EXPECT_EQ(escape_markdown("![x](y) *b* `c` <i> $1$ a|b #h ~s~ \\"),
            "\\!\\[x\\](y) \\*b\\* \\`c\\` &lt;i&gt; \\$1\\$ a\\|b \\#h \\~s\\~ \\\\");
}

}  // namespace
