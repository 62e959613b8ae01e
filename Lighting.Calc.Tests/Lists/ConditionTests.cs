namespace Lighting.Calc.Tests.Lists;

/// <summary>Conditions on switches as a person writes them.</summary>
public class ConditionTests
{
    [Theory]
    [InlineData("lights=pilot or lights=head", "lights=pilot|head")]
    [InlineData("lights=pilot OR Lights=head|pilot", "lights=pilot|head")]
    [InlineData("ignition=on; lights=pilot or brake=on or lights=head", "ignition=on; lights=pilot|head or brake=on")]
    public void A_switch_named_twice_as_an_alternative_may_be_in_either_position(string text, string meant)
    {
        Assert.Equal(meant, Condition.Parse(text).ToString());
        Assert.Equal(Condition.Parse(meant), Condition.Parse(text));
    }

    [Theory]
    [InlineData("lights=pilot; lights=head")]
    [InlineData("lights=pilot; brake=on or lights=head")]
    public void A_switch_that_would_have_to_be_in_two_positions_is_refused(string text)
    {
        Assert.False(Condition.TryParse(text, out _, out string? expected));
        Assert.Equal("the switch 'lights' once, with its positions joined by '|'", expected);
    }
}
