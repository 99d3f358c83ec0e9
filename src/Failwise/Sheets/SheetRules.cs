using System.Text;

namespace Failwise.Sheets;

/// <summary>The box that tells how to fill in the sheets.</summary>
internal static class SheetRules
{
    public static void Write(StringBuilder body) => body.Append("""
        <section class="rules"><h2>How to fill in</h2>
        <ul>
        <li>Look <b>before you clean</b>: cleaning destroys the marks with a &#9733;. Keep order and position; mark shells and caps as they come out.</li>
        <li>Write a number into the box: <b>1</b> trace, <b>2</b> light, <b>3</b> moderate, <b>4</b> heavy, <b>5</b> destroyed. Add <b>?</b> when not quite sure, <b>??</b> when doubtful.</li>
        <li><b>ok</b>: looked at and normal. Write down the good parts too; they decide as often as the bad ones. <b>nl</b>: not looked at. An empty box says nothing.</li>
        <li>One number under <b>all</b> stands for every place of the row.</li>
        <li>A letter beside the number says where on the part: the letters stand under each table.</li>
        <li>The small drawings show the kind of mark, not its size or exact place. When two look alike, write both and put a ? to each.</li>
        </ul></section>

        """);
}
