#:property PublishAot=false
// Says of each assembly named what machine code it holds besides the portable one: "linux x64 FILE", "none FILE".
using System.Reflection.PortableExecutable;

// What a ready-to-run image for another system than Windows combines its machine with (IMAGE_FILE_MACHINE_OS_MASK_*).
(string System, int Mask)[] systems = [("win", 0), ("linux", 0x7B79), ("osx", 0x4644)];
foreach (string file in args)
{
    using var reader = new PEReader(File.OpenRead(file));
    DirectoryEntry native = reader.PEHeaders.CorHeader!.ManagedNativeHeaderDirectory;
    string code = "none";
    // A ready-to-run header begins with the letters RTR.
    if (native.Size > 0 && reader.GetSectionData(native.RelativeVirtualAddress).GetReader().ReadUInt32() == 0x00525452)
        foreach ((string system, int mask) in systems)
        {
            var machine = (Machine)((int)reader.PEHeaders.CoffHeader.Machine ^ mask);
            if (machine is Machine.Amd64 or Machine.Arm64)
                code = $"{system}-{(machine == Machine.Amd64 ? "x64" : "arm64")}";
        }
    Console.WriteLine($"{code} {Path.GetFileName(file)}");
}
