Console.WriteLine("failwise");
